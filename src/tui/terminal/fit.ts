import stringWidth from 'string-width'
import { visibleLine } from '../../scenarios/files/text/visible-text.js'

const ESCAPE = '\u001B'

/** Length of the SGR sequence (colour or weight) that starts at `index`, or 0 when none does. */
export function styleLength(text: string, index: number): number {
  if (text[index] !== ESCAPE || text[index + 1] !== '[') return 0
  let end = index + 2
  while (isParameter(text.charCodeAt(end))) end++
  return text[end] === 'm' ? end + 1 - index : 0
}

/**
 * Whether a UTF-16 unit is a character of one column by itself: Latin, arrows, box drawing, blocks, geometric shapes and
 * braille. Combining marks, emoji and wide scripts are not among them.
 */
export function isPlainWidth(unit: number): boolean {
  return (
    (unit >= 0x20 && unit < 0x7f) ||
    (unit >= 0xa0 && unit < 0x300 && unit !== 0xad) ||
    (unit >= 0x2010 && unit < 0x2028) ||
    (unit >= 0x2030 && unit < 0x203c) ||
    (unit >= 0x2190 && unit < 0x2200) ||
    (unit >= 0x2500 && unit < 0x25fd) ||
    (unit >= 0x2800 && unit < 0x2900)
  )
}

/** Columns a row takes on screen; style sequences take none. Rows of plain characters, nearly all, are counted without ado. */
export function columnsOf(text: string): number {
  let columns = 0
  for (let index = 0; index < text.length; index++) {
    if (isPlainWidth(text.charCodeAt(index))) {
      columns++
      continue
    }
    const style = styleLength(text, index)
    if (style === 0) return stringWidth(text)
    index += style - 1
  }
  return columns
}

/** The row cut to at most `columns`; styles that were open at the cut are closed. */
export function clipRow(text: string, columns: number): string {
  if (columns <= 0) return ''
  if (columnsOf(text) <= columns) return text
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
    const width = isPlainWidth(text.charCodeAt(index)) ? 1 : stringWidth(character)
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

/** Digits and semicolons; false past the end of a text. */
const isParameter = (unit: number): boolean => (unit >= 0x30 && unit < 0x3a) || unit === 0x3b

/** A finished row in which nothing but styles drives the terminal: whatever else is hidden in it is shown. */
export function onlyStyled(row: string): string {
  let out = ''
  let from = 0
  for (let index = row.indexOf(ESCAPE); index >= 0; index = row.indexOf(ESCAPE, index + 1)) {
    const length = styleLength(row, index)
    if (length === 0) continue
    out += visibleLine(row.slice(from, index)) + row.slice(index, index + length)
    from = index + length
  }
  return out + visibleLine(row.slice(from))
}

/** Plain words broken into rows of at most `columns`, what is hidden in them shown; a longer word is cut. */
export function wrapWords(text: string, columns: number): string[] {
  const rows: string[] = []
  let row = ''
  for (const word of heldTogether(text.split(/\s+/).filter(Boolean).map(visibleLine), columns)) {
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

const UNIT = /^(?:%|ft|mL|mph|deg|degrees|rpm|lb|grit|pins?)(?![A-Za-z])/
const NUMBERED = /\b(?:board|slide|target|frame|ball|RG|differential|intermediate)$/i

/** Words, but a figure with its unit and a word with the figure it names as one, where both fit on a row. */
function heldTogether(words: readonly string[], columns: number): string[] {
  const held: string[] = []
  for (const word of words) {
    const last = held.at(-1) ?? ''
    const belongs = (/\d$/.test(last) && UNIT.test(word)) || (NUMBERED.test(last) && /^\d/.test(word))
    if (belongs && columnsOf(`${last} ${word}`) <= columns) held[held.length - 1] = `${last} ${word}`
    else held.push(word)
  }
  return held
}
