import { type BallDynamics, dynamicsOf } from '../ball/dynamics.js'
import type { BlockSetup } from '../block/types.js'
import type { BowlerProfile } from '../bowler/profile.js'
import { type Pricing, pricingFor } from './pricing.js'

const bagDynamics = new WeakMap<BlockSetup['bag'], readonly BallDynamics[]>()
const pricings = new WeakMap<BowlerProfile, Map<string, Pricing>>()

/** Dynamics of the bag's balls, in its order; worked out once a bag. */
export function dynamicsOfBag(bag: BlockSetup['bag']): readonly BallDynamics[] {
  let known = bagDynamics.get(bag)
  if (!known) {
    known = bag.map((ball) => dynamicsOf(ball))
    bagDynamics.set(bag, known)
  }
  return known
}

/** Pricing of a block's results for its bowler; worked out once. */
export function pricingOf(setup: BlockSetup): Pricing {
  const ofBowler = pricings.get(setup.bowler) ?? new Map<string, Pricing>()
  pricings.set(setup.bowler, ofBowler)
  let pricing = ofBowler.get(setup.scoring)
  if (!pricing) {
    pricing = pricingFor(setup.bowler, setup.scoring)
    ofBowler.set(setup.scoring, pricing)
  }
  return pricing
}
