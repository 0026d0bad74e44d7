import type { Hand } from '../../sim/world/bowler/profile.js'
import { FILM_BOARDS } from '../../sim/world/lane/film.js'
import { DOTS_DOWN } from './dots.js'

export const LANE_FEET = 60
const LABEL_COLUMNS = 3
/**
 * The deck's columns by the whole width, and by nothing else, so that the rack stands in the same place however many rows a
 * screen has for its lane. At the usual heights it is then about as wide as it is deep; the lane keeps a character a foot.
 */
const DECK_COLUMNS: readonly (readonly [fromColumns: number, deckColumns: number])[] = [
  [140, 30],
  [86, 21],
  [0, 14],
]

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
  const deckColumns = DECK_COLUMNS.find(([from]) => columns >= from)![1]
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
