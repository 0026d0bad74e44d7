import stringWidth from 'string-width'

const ESCAPE = '\u001B'

/** Length of the SGR sequence (colour or weight) that starts at `index`, or 0 when none does. */
function styleLength(text: string, index: number): number {
  if (text[index] !== ESCAPE || text[index + 1] !== '[') return 0
  let end = index + 2
  while (end < text.length && text[end] !== 'm') end++
  return end < text.length ? end + 1 - index : 0
}

/** Columns a row takes on screen; style sequences take none. */
export function columnsOf(text: string): number {
  return stringWidth(text)
}

/** The row cut to at most `columns`; styles that were open at the cut are closed. */
export function clipRow(text: string, columns: number): string {
  if (columns <= 0) return ''
  if (stringWidth(text) <= columns) return text
  let used = 0
  let styled = false
  for (let index = 0; index < text.length; ) {
    const style = styleLength(text, index)
    if (style > 0) {
      styled = true
      index += style
      continue
    }
    const character = String.fromCodePoint(text.codePointAt(index)!)
    const width = stringWidth(character)
    if (used + width > columns) return text.slice(0, index) + (styled ? `${ESCAPE}[0m` : '')
    used += width
    index += character.length
  }
  return text
}

/** The row cut or filled with spaces to exactly `columns`. */
export function fitRow(text: string, columns: number): string {
  const width = columnsOf(text)
  if (width > columns) return fitRow(clipRow(text, columns), columns)
  return text + ' '.repeat(columns - width)
}

/** Plain words broken into rows of at most `columns`; a longer word is cut. */
export function wrapWords(text: string, columns: number): string[] {
  const rows: string[] = []
  let row = ''
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const joined = row === '' ? word : `${row} ${word}`
    if (columnsOf(joined) <= columns) row = joined
    else {
      if (row !== '') rows.push(row)
      row = clipRow(word, columns)
    }
  }
  if (row !== '') rows.push(row)
  return rows
}
