import { FILM_BOARDS, FILM_ROWS } from '../lane/film.js'
import { BOARD_WIDTH_METRES } from '../units.js'

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
  const leftShare = place - board
  const row = rowPlace | 0
  const cell = row * FILM_BOARDS + board
  const near = microns[cell]! + (microns[cell + 1]! - microns[cell]!) * leftShare
  const farShare = rowPlace - row
  if (farShare <= 0 || row === LAST_ROW) return near
  const far = microns[cell + FILM_BOARDS]! * (1 - leftShare) + microns[cell + FILM_BOARDS + 1]! * leftShare
  return near + (far - near) * farShare
}
