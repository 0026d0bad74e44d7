import type { Size } from '../draw/layout.js'

/** Head, lane frame, result, score sheet, panel, move and keys: everything of the play screen but the lane's own rows. */
const ROWS_AROUND = 13
const LEAST_LANE_ROWS = 8
const MOST_LANE_COLUMNS = 150
const SIDE_FROM: Size = { columns: 110, rows: 30 }
const SIDE_COLUMNS = 33
/** Where what the others did fits whole. */
const WIDE_SIDE_COLUMNS = 46
const WIDE_SIDE_FROM_COLUMNS = 170

/** How much of a screen a lane takes, with its board numbers and its deck, and what is left beside it. */
interface LaneSize {
  readonly columns: number
  /** Rows of the 39 boards. */
  readonly rows: number
  /** Columns beside the pins; 0 where there is no room for words. */
  readonly sideColumns: number
}

/** From this width on the belief stands beside the score sheet; a narrower terminal of this height has a row for it. */
const BELIEF_FROM: Size = { columns: 100, rows: 30 }
export const hasBeliefRow = ({ columns, rows }: Size): boolean =>
  columns < BELIEF_FROM.columns && rows >= BELIEF_FROM.rows

/**
 * The lane's size on a terminal, the same on every screen of a block, so that lane and rack stay where they are; the row below
 * it is air, or tells of whom the block is bowled against.
 */
export function laneSize(size: Size): LaneSize {
  const most = size.rows >= 56 ? 30 : size.rows >= 50 ? 26 : 20
  const hasSide = size.columns >= SIDE_FROM.columns && size.rows >= SIDE_FROM.rows
  const sideColumns = !hasSide ? 0 : size.columns >= WIDE_SIDE_FROM_COLUMNS ? WIDE_SIDE_COLUMNS : SIDE_COLUMNS
  const spare = size.rows - ROWS_AROUND - (hasBeliefRow(size) ? 1 : 0)
  return {
    columns: Math.min(MOST_LANE_COLUMNS, size.columns - 1 - sideColumns),
    rows: Math.min(most, Math.max(LEAST_LANE_ROWS, spare - 1)),
    sideColumns,
  }
}
