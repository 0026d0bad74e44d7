import { samplesFrom } from '../../sample-ranges.js'
import { boardToMetres, metresToBoard } from '../../units.js'
import { dynamicsOf } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import type { BlockSetup, ThrowRecord } from '../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import { FILM_ROWS } from '../../world/lane/film.js'
import { type Belief, weights } from '../belief/belief.js'
import { imaginedLane } from '../belief/imagined-lanes.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../shots/delivery-nodes.js'

/** Marks down the lane at which a ball that vanishes is told by its nearest board. */
export const SIGHT_MARKS_FEET = [15, 30, 45] as const
export type SightMark = (typeof SIGHT_MARKS_FEET)[number]

/** Deliveries tried on each imagined lane. */
const DELIVERIES = 100
/** Seen to the nearest board. */
const NEAREST_BOARDS = 0.5
/** Less than this of the belief explaining what was seen, and the ball was too odd a one to ask about. */
const LEAST_EXPLAINED = 0.004

const outcome = newRollOutcome()
const launch = scratchLaunch()
const path = new Float64Array(FILM_ROWS)

/** Board of a path at a distance, half way between the middles of two half feet. */
function boardAtFeet(rolled: Float64Array, feet: number): number {
  const row = 2 * feet
  return metresToBoard((rolled[row - 1] + rolled[row]) / 2)
}

/** Boards at which a ball was seen before it vanished, to the nearest. */
export function seenMarks(record: ThrowRecord, vanishesFeet: SightMark): number[] {
  return SIGHT_MARKS_FEET.filter((feet) => feet <= vanishesFeet).map((feet) =>
    Math.round(boardAtFeet(record.truth.path, feet)),
  )
}

/**
 * What can be known of the oil when a ball has vanished on its way: each hypothesis weighed by the share of deliveries of this
 * line that pass every mark on the board seen (likelihood by counting, as in approximate Bayesian computation).
 *
 * @param belief before this throw
 * @returns weights that sum to 1; null where hardly any delivery explains what was seen
 */
export function weightsWhenVanished(
  setup: BlockSetup,
  belief: Belief,
  record: ThrowRecord,
  vanishesFeet: SightMark,
): Float64Array | null {
  const ball = setup.bag.find(({ id }) => id === record.decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${record.decision.ballId}" in the bag.`)
  const dynamics = dynamicsOf(ball)
  const meant = meantThrow(setup.bowler, record.decision.aim, record.decision.release)
  const nodes = deliveryNodes(DELIVERIES, samplesFrom('vanished', DELIVERIES))
  const seen = seenMarks(record, vanishesFeet)
  const near = NEAREST_BOARDS * (boardToMetres(1) - boardToMetres(0))
  const seenMetres = seen.map(boardToMetres)
  const passes = (): boolean =>
    seenMetres.every((metres, mark) => {
      const row = 2 * SIGHT_MARKS_FEET[mark]
      return Math.abs((path[row - 1] + path[row]) / 2 - metres) <= near
    })
  const explained = weights(belief).map((weight, hypothesis) => {
    const { film, steps } = imaginedLane(belief, hypothesis, record.spot.lane, setup.bowler.hand)
    let count = 0
    for (let k = 0; k < DELIVERIES; k++) {
      deliverInto(launch, meant, nodes, k * ERROR_DIMENSIONS)
      rollBall(film, steps, dynamics, launch, outcome, path)
      if (passes()) count++
    }
    return (weight * count) / DELIVERIES
  })
  const sum = explained.reduce((all, one) => all + one, 0)
  return sum < LEAST_EXPLAINED ? null : explained.map((one) => one / sum)
}
