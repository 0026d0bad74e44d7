import type { BallDynamics } from '../../world/ball/dynamics.js'
import { MOST_TOGETHER, newRollOutcome, type RollOutcome, rollBalls } from '../../world/ball/motion.js'
import type { StepTable } from '../../world/ball/step-table.js'
import { deliverInto, type MeantThrow, scratchLaunch } from '../../world/bowler/release.js'
import type { OilFilm } from '../../world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import type { Pricing } from '../value/pricing.js'
import { lookUpWorth } from '../value/value-table.js'
import { ERROR_DIMENSIONS } from './delivery-nodes.js'

/** A lane as the search sees it: a right-hander's film with its steps. */
export interface FilmInPlay {
  readonly film: OilFilm
  readonly steps: StepTable
}

const outcomes = Array.from({ length: MOST_TOGETHER }, newRollOutcome)
const launches = Array.from({ length: MOST_TOGETHER }, scratchLaunch)

/**
 * Rolls one throw with every error of `nodes` and writes what each delivery is worth into `into`.
 * The same nodes for two aims give paired figures, whose difference is far steadier than either.
 */
export function deliverAll(
  { film, steps }: FilmInPlay,
  ball: BallDynamics,
  meant: MeantThrow,
  nodes: Float64Array,
  worthOf: (outcome: RollOutcome) => number,
  into: Float64Array,
): void {
  const count = nodes.length / ERROR_DIMENSIONS
  for (let first = 0; first < count; first += MOST_TOGETHER) {
    const some = Math.min(MOST_TOGETHER, count - first)
    for (let k = 0; k < some; k++) deliverInto(launches[k], meant, nodes, (first + k) * ERROR_DIMENSIONS)
    rollBalls(film, steps, ball, launches, outcomes, some)
    for (let k = 0; k < some; k++) into[first + k] = worthOf(outcomes[k])
  }
}

/** Worth of a first ball by how it got to the pins. */
export function firstBallWorth(pricing: Pricing, speedStep: number): (outcome: RollOutcome) => number {
  const table = pricing.tables[speedStep + 1]
  return (rolled) =>
    rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES
      ? pricing.gutterWorth
      : lookUpWorth(table, rolled.lateralAtPinsMetres, rolled.tangentAtPins, 0)
}

/** Mean of the first `count` values. */
export function meanOf(values: Float64Array, count = values.length): number {
  let sum = 0
  for (let k = 0; k < count; k++) sum += values[k]
  return sum / count
}
