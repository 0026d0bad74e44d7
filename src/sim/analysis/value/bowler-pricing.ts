import { keptWith } from '../../kept-with.js'
import { type BallDynamics, dynamicsOf } from '../../world/ball/dynamics.js'
import type { BlockSetup } from '../../world/block/types.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type BowlerOdds, bowlerOdds } from './bowler-odds.js'
import { type Pricing, pricingWith } from './pricing.js'
import { type FrameWeights, frameWeights, stationaryBonus } from './worth.js'

const bagDynamics = new WeakMap<BlockSetup['bag'], readonly BallDynamics[]>()
const odds = new WeakMap<BowlerProfile, BowlerOdds>()

/** Dynamics of the bag's balls, in its order; worked out once a bag. */
export function dynamicsOfBag(bag: BlockSetup['bag']): readonly BallDynamics[] {
  let known = bagDynamics.get(bag)
  if (!known) {
    known = bag.map((ball) => dynamicsOf(ball))
    bagDynamics.set(bag, known)
  }
  return known
}

/** What a bowler's balls come to at the pins; worked out once. */
export function oddsOf(bowler: BowlerProfile): BowlerOdds {
  let known = odds.get(bowler)
  if (!known) {
    known = oddsOfLike(bowler)
    odds.set(bowler, known)
  }
  return known
}

/** Bowlers whose odds are kept for others of the same figures: block after block has its own copy of the same one. */
const KEPT_BOWLERS = 4
let kept: readonly { readonly figures: string; readonly odds: BowlerOdds }[] = []

function oddsOfLike(bowler: BowlerProfile): BowlerOdds {
  const figures = JSON.stringify(bowler)
  const known = kept.find((one) => one.figures === figures)
  if (known) return known.odds
  const made = { figures, odds: bowlerOdds(bowler) }
  kept = [made, ...kept].slice(0, KEPT_BOWLERS)
  return made.odds
}

/** Weights of a frame's outcomes for a bowler on the average of all scores a game can stand at. */
export function averageWeights({ bowler, scoring }: Pick<BlockSetup, 'bowler' | 'scoring'>): FrameWeights {
  const { baseline } = oddsOf(bowler)
  return frameWeights(scoring, stationaryBonus(baseline), baseline)
}

/**
 * Pricing of a block's results for its bowler, worked out once for each set of weights.
 * @param weights of the coming rack's outcomes; without them the score is left out of account
 */
export function pricingOf(
  setup: Pick<BlockSetup, 'bowler' | 'scoring'>,
  weights: FrameWeights = averageWeights(setup),
): Pricing {
  return pricingKept(oddsOf(setup.bowler), weights)
}

/** Few in number: the score enters by what is pending and, at the end of a game, by what is left. */
const pricingKept = keptWith(
  ({ perFirstBallPin, perSecondBallPin, strike, spare, perFirstBallPinOfSpare }: FrameWeights) =>
    [perFirstBallPin, perSecondBallPin, strike, spare, perFirstBallPinOfSpare].join(' '),
  pricingWith,
)
