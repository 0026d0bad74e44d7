import { FILM_BOARDS, FILM_ROWS } from '../lane/film.js'
import { BOARD_WIDTH_METRES } from '../units.js'

const LAST_ROW = FILM_ROWS - 1
const BOARDS_PER_METRE = 1 / BOARD_WIDTH_METRES
/** Just short of the last board's middle, so that there is always a board to the left. */
const LEFTMOST_PLACE = FILM_BOARDS - 1 - 1e-9

/**
 * Film in micrometres under a contact point, linear between the middles of the cells and level beyond the outermost.
 * `rowPlace` counts half feet from the middle of row 0, from -0.5; `lateralMetres` from the right edge of the lane.
 */
export function filmUnderBall(microns: Float64Array, rowPlace: number, lateralMetres: number): number {
  const place = Math.max(0, Math.min(LEFTMOST_PLACE, lateralMetres * BOARDS_PER_METRE - 0.5))
  const board = place | 0
  const leftShare = place - board
  const row = rowPlace | 0
  const cell = row * FILM_BOARDS + board
  const near = microns[cell]! + (microns[cell + 1]! - microns[cell]!) * leftShare
  const farShare = rowPlace - row
  if (farShare <= 0 || row === LAST_ROW) return near
  const far = microns[cell + FILM_BOARDS]! * (1 - leftShare) + microns[cell + FILM_BOARDS + 1]! * leftShare
  return near + (far - near) * farShare
}
