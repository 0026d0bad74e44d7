import { BOARD_WIDTH_METRES } from '../../units.js'
import { FILM_BOARDS, FILM_ROWS } from '../lane/film.js'

const LAST_ROW = FILM_ROWS - 1
const BOARDS_PER_METRE = 1 / BOARD_WIDTH_METRES
const LAST_BOARD_INDEX = FILM_BOARDS - 1

/**
 * Film in micrometres under a contact point, linear between the middles of the cells and level beyond the outermost.
 * `rowPlace` counts half feet from the middle of row 0, from -0.5; `lateralMetres` from the right edge of the lane.
 */
export function filmUnderBall(microns: Float64Array, rowPlace: number, lateralMetres: number): number {
  const place = Math.max(0, Math.min(LAST_BOARD_INDEX, lateralMetres * BOARDS_PER_METRE - 0.5))
  const board = Math.min(place | 0, LAST_BOARD_INDEX - 1)
  const row = rowPlace | 0
  const farShare = row === LAST_ROW ? 0 : rowPlace - row
  return filmBetween(microns, row * FILM_BOARDS + board, FILM_BOARDS, place - board, farShare)
}

/**
 * Film in micrometres between four cells.
 * @param cell the nearest and rightmost of them; the next row begins `boards` cells on
 * @param leftShare how far to the left of that cell, 0 to 1; @param farShare how far beyond it, below 1; not beyond for 0 or less
 */
export function filmBetween(
  microns: Float64Array,
  cell: number,
  boards: number,
  leftShare: number,
  farShare: number,
): number {
  const near = microns[cell]! + (microns[cell + 1]! - microns[cell]!) * leftShare
  if (farShare <= 0) return near
  const far = microns[cell + boards]! * (1 - leftShare) + microns[cell + boards + 1]! * leftShare
  return near + (far - near) * farShare
}
