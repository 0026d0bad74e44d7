import type { BowlerProfile } from '../../world/bowler/profile.js'
import { countPins, FULL_RACK } from '../../world/pins/leaves.js'
import type { Scoring } from '../../world/scoring/game.js'
import {
  type BowlerOdds,
  bowlerOdds,
  CONVERTED,
  FELLED,
  FELLED_OF_SPARES,
  FOLLOWING,
  MEANS,
  STRUCK,
} from './bowler-odds.js'
import { buildValueTable, ENTRIES, type ValueTable } from './value-table.js'
import { type FrameOdds, type FrameWeights, frameWeights, stationaryBonus, weighFrame, weighLeave } from './worth.js'

export { spareOddsOf } from './bowler-odds.js'

/** What a throw's results are worth to one bowler under one scoring system, in game pins. */
export interface Pricing {
  /** Worth of a first ball by the mask it leaves, against the baseline's average first ball. */
  readonly worthOfLeave: (mask: number) => number
  readonly gutterWorth: number
  /** First-ball worth by entry, one table for each speed step: softer, usual, firmer. */
  readonly tables: readonly ValueTable[]
  /** Weights of the frame's outcomes, for pricing second balls. */
  readonly weights: FrameWeights
  readonly baseline: FrameOdds
}

/** Prices everything a bowler's ball can do at a rack, the score left out of account. */
export function pricingFor(profile: BowlerProfile, scoring: Scoring): Pricing {
  const odds = bowlerOdds(profile)
  return pricingWith(odds, frameWeights(scoring, stationaryBonus(odds.baseline), odds.baseline))
}

/** Prices everything a bowler's ball can do at a rack with the given weights of the frame's outcomes. */
export function pricingWith(odds: BowlerOdds, weights: FrameWeights): Pricing {
  const { baseline, oddsOf } = odds
  const average = weighFrame(weights, baseline)
  const worthOfLeave = (mask: number): number =>
    weighLeave(weights, { felled: 10 - countPins(mask), ...oddsOf(mask) }) - average
  const tables = odds.meansByEntry.map((means) => {
    const exact = new Float64Array(ENTRIES)
    for (let place = 0; place < ENTRIES; place++) exact[place] = weighMeans(weights, means, place * MEANS) - average
    return buildValueTable(exact)
  })
  return { worthOfLeave, gutterWorth: worthOfLeave(FULL_RACK), tables, weights, baseline }
}

/** Worth is linear in what a first ball does on average, so that one tabulation serves every set of weights. */
function weighMeans(weights: FrameWeights, means: Float64Array, at: number): number {
  return (
    weights.perFirstBallPin * means[at + FELLED] +
    weights.perSecondBallPin * means[at + FOLLOWING] +
    weights.strike * means[at + STRUCK] +
    weights.spare * means[at + CONVERTED] +
    weights.perFirstBallPinOfSpare * means[at + FELLED_OF_SPARES]
  )
}
