import { FILM_BOARDS, FILM_ROWS } from '../lane/film.js'
import { BOARD_WIDTH_METRES } from '../units.js'

const LAST_ROW = FILM_ROWS - 1
const LAST_BOARD_INDEX = FILM_BOARDS - 1
const BOARDS_PER_METRE = 1 / BOARD_WIDTH_METRES

/**
 * Film in micrometres under a contact point, linear between the middles of the cells and level beyond the outermost.
 * `rowPlace` counts half feet from the middle of row 0; `lateralMetres` from the right edge of the lane.
 */
export function filmUnderBall(microns: Float64Array, rowPlace: number, lateralMetres: number): number {
  let place = lateralMetres * BOARDS_PER_METRE - 0.5
  if (place < 0) place = 0
  else if (place > LAST_BOARD_INDEX) place = LAST_BOARD_INDEX
  let board = place | 0
  if (board === LAST_BOARD_INDEX) board = LAST_BOARD_INDEX - 1
  const leftShare = place - board
  let row = rowPlace > 0 ? rowPlace | 0 : 0
  if (row > LAST_ROW) row = LAST_ROW
  const farShare = rowPlace - row
  const cell = row * FILM_BOARDS + board
  const near = microns[cell]! + (microns[cell + 1]! - microns[cell]!) * leftShare
  if (farShare <= 0 || row === LAST_ROW) return near
  const next = cell + FILM_BOARDS
  const far = microns[next]! + (microns[next + 1]! - microns[next]!) * leftShare
  return near + (far - near) * farShare
}
