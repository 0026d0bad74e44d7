import { normalDensity, normalDistribution } from '../../../exact-math.js'
import { metresToBoard } from '../../../units.js'
import { dynamicsOf } from '../../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../world/ball/motion.js'
import type { BlockSetup, ThrowRecord } from '../../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../../world/bowler/release.js'
import { type Belief, weights } from '../../belief/belief.js'
import { imaginedLane } from '../../belief/imagined-lanes.js'
import { seenCells } from '../../belief/seen-cells.js'

/**
 * How far a throw came in from where it was to be expected, in boards at the pins (above 0 is to the left as a
 * right-hander sees it, that is high), and how much of that the throw itself explains and how much the oil.
 */
export interface Innovation {
  readonly predictedBoard: number
  readonly shownBoard: number
  /** What the delivery did, as far as can be told. */
  readonly deliveryBoards: number
  /** How much the idea of where this aim goes on this lane moved. */
  readonly laneBoards: number
  /** Share of the delivery in both, 0 to 1. */
  readonly deliveryShare: number
}

const outcome = newRollOutcome()
const launch = scratchLaunch()
const MEANT = [0, 0, 0, 0, 0]
/** A share of next to nothing tells nothing. */
const LEAST_BOARDS = 0.05

/**
 * Divides the surprise of a throw between hand and lane as an ideal observer would who sees what the player sees: the
 * lane's part is how far the expected entry of the same aim moves when the throw is taken in.
 *
 * @param before the belief the throw was decided with
 * @param after the same with the throw taken in
 * @returns null for a ball in the gutter, which has no entry
 */
export function innovationOf(setup: BlockSetup, before: Belief, after: Belief, record: ThrowRecord): Innovation | null {
  const cells = seenCells(record.observation, setup.seeing)
  if (cells.entryBoard === null) return null
  const predicted = meantEntries(setup, before, record)
  const mean = weightedMean(predicted, weights(before))
  const spread = Math.sqrt(
    weightedVariance(predicted, weights(before), mean) + missVariance(setup, before, record, predicted),
  )
  const shown = meanWithin(mean, spread, cells.entryBoard.from, cells.entryBoard.to)
  // while the hypotheses stay the same ones, only their weights may count: the wear of this throw came after it
  const sameIdeas = after.hypotheses.coordinates.every((z, i) => z === before.hypotheses.coordinates[i])
  const now = sameIdeas
    ? weightedMean(predicted, weights(after))
    : weightedMean(meantEntries(setup, after, record), weights(after))
  const laneBoards = now - mean
  const deliveryBoards = shown - mean - laneBoards
  const both = Math.abs(laneBoards) + Math.abs(deliveryBoards)
  return {
    predictedBoard: mean,
    shownBoard: shown,
    deliveryBoards,
    laneBoards,
    deliveryShare: both > LEAST_BOARDS ? Math.abs(deliveryBoards) / both : 0.5,
  }
}

/** Where the aim would come in without a miss, under each hypothesis. */
function meantEntries(setup: BlockSetup, belief: Belief, record: ThrowRecord): Float64Array {
  return Float64Array.from(weights(belief), (_, index) => entryWith(setup, belief, record, index, MEANT))
}

function entryWith(
  setup: BlockSetup,
  belief: Belief,
  { spot, decision }: ThrowRecord,
  hypothesis: number,
  normals: readonly number[],
): number {
  const ball = setup.bag.find((one) => one.id === decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const { film, steps } = imaginedLane(belief, hypothesis, spot.lane, setup.bowler.hand)
  deliverInto(launch, meantThrow(setup.bowler, decision.aim, decision.release), normals)
  rollBall(film, steps, dynamicsOf(ball), launch, outcome)
  return metresToBoard(outcome.lateralAtPinsMetres)
}

/** Variance at the pins of the bowler's misses, by one standard deviation of each on the likeliest lane. */
function missVariance(setup: BlockSetup, belief: Belief, record: ThrowRecord, predicted: Float64Array): number {
  const likeliest = weights(belief).reduce((best, weight, index, all) => (weight > all[best] ? index : best), 0)
  return MEANT.reduce((sum, _, miss) => {
    const moved = entryWith(
      setup,
      belief,
      record,
      likeliest,
      MEANT.map((_, index) => (index === miss ? 1 : 0)),
    )
    const by = moved - predicted[likeliest]
    return sum + by * by
  }, 0)
}

/** Mean of a normal number known to lie in an interval, whose ends may be infinite. */
export function meanWithin(mean: number, spread: number, from: number, to: number): number {
  const low = (from - mean) / spread
  const high = (to - mean) / spread
  const chance = normalDistribution(high) - normalDistribution(low)
  if (chance < 1e-9) return Math.min(Math.max(mean, from), to)
  const density = (z: number): number => (Math.abs(z) > 40 ? 0 : normalDensity(z))
  return mean + (spread * (density(low) - density(high))) / chance
}

function weightedMean(values: Float64Array, shares: Float64Array): number {
  return values.reduce((sum, value, i) => sum + shares[i] * value, 0)
}

function weightedVariance(values: Float64Array, shares: Float64Array, mean: number): number {
  return values.reduce((sum, value, i) => sum + shares[i] * (value - mean) * (value - mean), 0)
}
