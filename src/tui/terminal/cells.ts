import { isPlainWidth } from './fit.js'
import { styleAfter, styleOfBlank } from './sgr.js'

/** A row of the screen cell by cell: what stands in each, and in what style. */
export interface Cells {
  readonly glyphs: readonly string[]
  readonly styles: readonly string[]
}

const ESCAPE = '\u001B'

/** A finished row as `columns` cells, cut or filled with blanks; null where some of its characters are not one cell wide. */
export function cellsOf(row: string, columns: number): Cells | null {
  const glyphs: string[] = []
  const styles: string[] = []
  let style = ''
  for (let index = 0; index < row.length && glyphs.length < columns; ) {
    if (row[index] === ESCAPE && row[index + 1] === '[') {
      const end = row.indexOf('m', index)
      if (end < 0) return null
      style = styleAfter(style, row.slice(index + 2, end))
      index = end + 1
      continue
    }
    if (!isPlainWidth(row.charCodeAt(index))) return null
    const glyph = row[index]!
    glyphs.push(glyph)
    styles.push(glyph === ' ' ? styleOfBlank(style) : style)
    index++
  }
  while (glyphs.length < columns) {
    glyphs.push(' ')
    styles.push('')
  }
  return { glyphs, styles }
}

export const blankCells = (columns: number): Cells => ({
  glyphs: new Array<string>(columns).fill(' '),
  styles: new Array<string>(columns).fill(''),
})
