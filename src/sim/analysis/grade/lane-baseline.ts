import { keptWith } from '../../kept-with.js'
import { samplesFrom } from '../../sample-ranges.js'
import type { BlockSetup, BlockState } from '../../world/block/types.js'
import { meantThrow } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { beliefFrom } from '../belief/belief.js'
import { laneImaginer } from '../belief/imagined-lanes.js'
import { knownBefore } from '../belief/shown.js'
import type { PricedLine } from '../shots/best-line.js'
import { deliveryNodes } from '../shots/delivery-nodes.js'
import { deliverAll, type FilmInPlay } from '../shots/direct-worth.js'
import { MEANS } from '../value/bowler-odds.js'
import { dynamicsOfBag, oddsOf, pricingOf } from '../value/bowler-pricing.js'
import type { Pricing } from '../value/pricing.js'
import { addFiguresAt } from '../value/value-table.js'
import type { FrameOdds } from '../value/worth.js'
import { sweepLines, sweptLines } from './line-sweep.js'

/** Lanes as they might be before anything was thrown, on each of which the bowler plays the best line. */
const LANES = 4
const ROUND = 0
const DELIVERIES = 512

/**
 * The bowler's average frame on the lanes of a block: the strike and spare rates of the best line on each of a few lanes as
 * they might be, drawn from what is posted. What a strike or a spare earns on later balls depends on how those go here, and not
 * on some lane elsewhere. Nothing of the hidden oil is in it, so the price of a choice tells nothing of it either. The same
 * for every throw of a block, so that all its figures stand on one footing.
 */
export const laneBaseline = keptWith(
  (seed: string) => seed,
  (setup: BlockSetup, seed): FrameOdds => {
    const sums = new Float64Array(MEANS)
    for (const lane of setup.lanes.keys()) addLane(setup, seed, lane, sums)
    const count = setup.lanes.length * LANES
    const [firstBallPins, secondBallPins, strike, spare, firstBallPinsOfSpares] = sums.map((sum) => sum / count)
    return { strike, spare, firstBallPins, secondBallPins, firstBallPinsOfSpares }
  },
)

/** What results are worth in a block, the score left out of account. */
export function blockPricing({ setup, seed }: Pick<BlockState, 'setup' | 'seed'>): Pricing {
  return pricingOf(setup, laneBaseline(setup, seed))
}

function addLane(setup: BlockSetup, seed: string, lane: number, sums: Float64Array): void {
  const { bag, bowler } = setup
  const belief = beliefFrom(knownBefore(setup, seed), lane, `${seed} baseline`, LANES)
  const lanes = laneImaginer(belief, lane, bowler.hand)(LANES, ROUND)
  const { bestOnEachLane } = sweepLines(lanes, dynamicsOfBag(bag), bowler, pricingOf(setup), sweptLines(bowler))
  bestOnEachLane.forEach((line, at) => {
    addFrame(setup, lanes[at], line, sums)
  })
}

/** Adds the means of a frame that begins with this line. */
function addFrame({ bag, bowler }: BlockSetup, inPlay: FilmInPlay, line: PricedLine, sums: Float64Array): void {
  const { means, gutter } = oddsOf(bowler)
  const own = new Float64Array(MEANS)
  deliverAll(
    inPlay,
    dynamicsOfBag(bag)[line.ballIndex],
    meantThrow(bowler, line.aim, 'strike'),
    deliveryNodes(DELIVERIES, samplesFrom('baseline', DELIVERIES)),
    (rolled) => {
      if (rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES) for (let k = 0; k < MEANS; k++) own[k] += gutter[k]
      else
        addFiguresAt(
          means,
          {
            lateralMetres: rolled.lateralAtPinsMetres,
            tangent: rolled.tangentAtPins,
            speedMetresPerSecond: rolled.speedAtPinsMetresPerSecond,
          },
          own,
        )
      return 0
    },
    new Float64Array(DELIVERIES),
  )
  for (let k = 0; k < MEANS; k++) sums[k] += own[k] / DELIVERIES
}
