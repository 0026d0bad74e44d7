import { exponential } from '../exact-math.js'

/** Standard deviation of the strip a ball presses on, in boards: the loaded part is about an inch and a half wide (chosen, no source). */
const SPREAD_BOARDS = 0.55

/** Boards whose middle lies further from the track than this are left alone. */
export const FOOTPRINT_REACH_BOARDS = 2.5

const STEPS_PER_BOARD = 64
const WEIGHTS = Float64Array.from({ length: FOOTPRINT_REACH_BOARDS * STEPS_PER_BOARD + 2 }, (_, step) => {
  const spreads = step / STEPS_PER_BOARD / SPREAD_BOARDS
  return exponential((-spreads * spreads) / 2)
})

/** How hard a ball presses on a board whose middle is `boardsAway` (0 to 2.5) from its track, against 1 under the track itself. */
export function footprintWeight(boardsAway: number): number {
  const place = boardsAway * STEPS_PER_BOARD
  const step = Math.floor(place)
  const share = place - step
  return WEIGHTS[step]! * (1 - share) + WEIGHTS[step + 1]! * share
}
