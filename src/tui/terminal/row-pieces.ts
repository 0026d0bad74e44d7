import type { Cells } from './cells.js'
import { clipRow, columnsOf, onlyStyled } from './fit.js'
import type { Piece } from './pen.js'
import { styleOfBlank } from './sgr.js'

const ERASE_TO_END = '\u001B[K'
/** A few cells that stayed as they are are written again rather than jumped over, where they take no other style. */
const LONGEST_BRIDGE = 4

/** What turns one row of cells into another. */
export function changedPieces(y: number, before: Cells, after: Cells): Piece[] {
  const pieces: Piece[] = []
  const count = after.glyphs.length
  const isSame = (x: number) => before.glyphs[x] === after.glyphs[x] && before.styles[x] === after.styles[x]
  /** A blank without a ground looks the same in every style that shows on none. */
  const takes = (style: string, x: number) =>
    after.styles[x] === style || (after.glyphs[x] === ' ' && after.styles[x] === '' && styleOfBlank(style) === '')
  let blankFrom = count
  while (blankFrom > 0 && after.glyphs[blankFrom - 1] === ' ' && after.styles[blankFrom - 1] === '') blankFrom--

  let x = 0
  while (x < blankFrom) {
    if (isSame(x)) {
      x++
      continue
    }
    const style = styleFrom(after, x, blankFrom)
    let end = x + 1
    for (let next = end, same = 0; next < blankFrom && takes(style, next) && same <= LONGEST_BRIDGE; next++) {
      same = isSame(next) ? same + 1 : 0
      if (same === 0) end = next + 1
    }
    // Past the last column the cursor stands in wait, and where it really is differs among terminals.
    const columns = end === count ? null : end - x
    pieces.push({ x, y, text: after.glyphs.slice(x, end).join(''), columns, style })
    x = end
  }
  for (x = blankFrom; x < count; x++) {
    if (isSame(x)) continue
    pieces.push({ x, y, text: ERASE_TO_END, columns: 0, style: '' })
    break
  }
  return pieces
}

/** The style to write from a cell on: of blanks, the style of what follows them, if it does not show on blanks. */
function styleFrom({ glyphs, styles }: Cells, x: number, end: number): string {
  let next = x
  while (next < end && glyphs[next] === ' ' && styles[next] === '') next++
  const style = next < end ? styles[next]! : ''
  return styleOfBlank(style) === '' ? style : styles[x]!
}

/** A row written anew, whatever stands there; it may hold anything, and drives nothing. */
export function wholePiece(y: number, row: string, columns: number): Piece {
  const clipped = clipRow(onlyStyled(row), columns)
  const text = `${clipped}\u001B[m${columnsOf(clipped) < columns ? ERASE_TO_END : ''}`
  return { x: 0, y, text, columns: null, style: '' }
}
