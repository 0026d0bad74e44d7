import type { Hand } from '../../sim/world/bowler/profile.js'
import { FILM_BOARDS } from '../../sim/world/lane/film.js'
import { DOTS_DOWN } from './dots.js'

export const LANE_FEET = 60
const LABEL_COLUMNS = 3
/** The lane keeps a character a foot before the deck gets more than it needs. */
const LEAST_LANE_COLUMNS = 60
const LEAST_DECK_COLUMNS = 14
const MOST_DECK_COLUMNS = 34
/** Columns a row of the lane at which the deck is as wide as it is deep, characters being about twice as high as wide. */
const DECK_COLUMNS_A_ROW = 1.4

/** Where boards and feet lie in a lane's picture. */
export interface LaneScale {
  readonly left: number
  readonly columns: number
  readonly rows: number
  /** First column of the deck, and how many it has. */
  readonly deckLeft: number
  readonly deckColumns: number
  readonly columnOf: (feet: number) => number
  readonly rowOf: (board: number) => number
  readonly dotOf: (board: number) => number
  /** The board nearest the middle of a row of the lane, counted from 0 at the top. */
  readonly boardOf: (row: number) => number
}

/**
 * @param columns whole width, with board numbers and deck
 * @param rows rows for the 39 boards
 */
export function laneScale(hand: Hand, columns: number, rows: number): LaneScale {
  const left = LABEL_COLUMNS + 1
  const wanted = Math.min(MOST_DECK_COLUMNS, Math.round(rows * DECK_COLUMNS_A_ROW))
  const deckColumns = Math.max(LEAST_DECK_COLUMNS, Math.min(wanted, columns - left - 1 - LEAST_LANE_COLUMNS))
  const laneColumns = columns - left - 1 - deckColumns
  const isRight = hand === 'right'
  const fromTop = (board: number) => (isRight ? FILM_BOARDS + 0.5 - board : board - 0.5) / FILM_BOARDS
  const within = (value: number, size: number) => Math.min(size - 1, Math.max(0, Math.floor(value)))
  return {
    left,
    columns: laneColumns,
    rows,
    deckLeft: left + laneColumns + 1,
    deckColumns,
    columnOf: (feet) => left + within((feet / LANE_FEET) * laneColumns, laneColumns),
    rowOf: (board) => 1 + within(fromTop(board) * rows, rows),
    dotOf: (board) => fromTop(board) * rows * DOTS_DOWN - 0.5,
    boardOf: (row) => {
      const down = ((row + 0.5) / rows) * FILM_BOARDS
      return Math.round(isRight ? FILM_BOARDS + 0.5 - down : down + 0.5)
    },
  }
}
