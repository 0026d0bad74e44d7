import { FILM_BOARDS, FILM_ROWS } from '../lane/film.js'
import { BOARD_WIDTH_METRES } from '../units.js'

const LAST_ROW = FILM_ROWS - 1
const BOARDS_PER_METRE = 1 / BOARD_WIDTH_METRES

/**
 * Film in micrometres under a contact point, linear between the middles of the cells and level beyond the outermost.
 * `rowPlace` counts half feet from the middle of row 0, from -0.5; `lateralMetres` from the right edge of the lane.
 */
export function filmUnderBall(microns: Float64Array, rowPlace: number, lateralMetres: number): number {
  const row = rowPlace | 0
  const farShare = row === LAST_ROW ? 0 : rowPlace - row
  return filmAcross(microns, row * FILM_BOARDS, FILM_BOARDS, lateralMetres * BOARDS_PER_METRE - 0.5, farShare)
}

/**
 * The same for a row whose cells begin at `rowStart` and the next, which begins `boards` cells on.
 * @param across boards to the left of the middle of the rightmost cell; @param farShare how far beyond the row, below 1; not beyond for 0 or less
 */
export function filmAcross(
  microns: Float64Array,
  rowStart: number,
  boards: number,
  across: number,
  farShare: number,
): number {
  const place = Math.max(0, Math.min(boards - 1, across))
  const board = Math.min(place | 0, boards - 2)
  const leftShare = place - board
  const cell = rowStart + board
  const near = microns[cell]! + (microns[cell + 1]! - microns[cell]!) * leftShare
  if (farShare <= 0) return near
  const far = microns[cell + boards]! * (1 - leftShare) + microns[cell + boards + 1]! * leftShare
  return near + (far - near) * farShare
}
