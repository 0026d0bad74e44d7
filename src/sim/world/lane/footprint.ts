import { exponential } from '../../exact-math.js'

/** Standard deviation of the strip a ball presses on, in boards: the loaded part is about an inch and a third wide (chosen, no source). */
const SPREAD_BOARDS = 0.5

/** Boards whose middle lies further from the track than this are left alone. */
export const FOOTPRINT_REACH_BOARDS = 2.5

const STEPS_PER_BOARD = 64
const bell = (boardsAway: number): number => {
  const spreads = boardsAway / SPREAD_BOARDS
  return exponential((-spreads * spreads) / 2)
}
const AT_REACH = bell(FOOTPRINT_REACH_BOARDS)
/** A bell lowered by its value at the reach, so that nothing jumps as a board comes within it. */
const WEIGHTS = Float64Array.from({ length: FOOTPRINT_REACH_BOARDS * STEPS_PER_BOARD + 2 }, (_, step) =>
  Math.max(0, (bell(step / STEPS_PER_BOARD) - AT_REACH) / (1 - AT_REACH)),
)

/** The boards a ball would press on with full weight to press as much as it does. */
export const FOOTPRINT_WIDTH_BOARDS =
  (2 * WEIGHTS.reduce((sum, weight) => sum + weight, 0) - WEIGHTS[0]!) / STEPS_PER_BOARD

/** How hard a ball presses on a board whose middle is `boardsAway` (0 to 2.5) from its track, against 1 under the track itself. */
export function footprintWeight(boardsAway: number): number {
  const place = boardsAway * STEPS_PER_BOARD
  const step = Math.floor(place)
  const share = place - step
  return WEIGHTS[step]! * (1 - share) + WEIGHTS[step + 1]! * share
}
