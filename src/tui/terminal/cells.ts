import { isPlainWidth, styleLength } from './fit.js'
import { styleAfter, styleOfBlank } from './sgr.js'

/** A row of the screen cell by cell: what stands in each, and in what style. */
export interface Cells {
  readonly glyphs: readonly string[]
  readonly styles: readonly string[]
}

/** A finished row as `columns` cells, cut or filled with blanks; null where some of its characters are not one cell wide. */
export function cellsOf(row: string, columns: number): Cells | null {
  const glyphs: string[] = []
  const styles: string[] = []
  let style = ''
  for (let index = 0; index < row.length && glyphs.length < columns; ) {
    const length = styleLength(row, index)
    if (length > 0) {
      style = styleAfter(style, row.slice(index + 2, index + length - 1))
      index += length
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
