import { arcTangent, exponential } from '../../exact-math.js'
import { boardsToMetres, degreesToRadians, feetToMetres } from '../../units.js'
import { type BowlerProfile, lateralSpreadAt } from '../../world/bowler/profile.js'
import { ARROWS_METRES } from '../../world/bowler/release.js'
import { countPins, FULL_RACK } from '../../world/pins/leaves.js'
import { carryDistribution, newCarryDistribution } from '../carry/carry-table.js'
import { type SpareOdds, spareOdds } from '../carry/spare-odds.js'
import { ENTRIES, visitEntries } from './value-table.js'
import { type FirstBallOutcome, type FrameOdds, frameOdds, meanSecondBallPins } from './worth.js'

const PINS_METRES = feetToMetres(60)
const MASKS = FULL_RACK + 1

/** Means kept of each exact entry, in this order. */
export const MEANS = 5
export const FELLED = 0
export const FOLLOWING = 1
export const STRUCK = 2
export const CONVERTED = 3
export const FELLED_OF_SPARES = 4

/** What a bowler's balls come to at the pins, before anything is said of what it is worth. */
export interface BowlerOdds {
  /** The bowler's spare odds at any leave. */
  readonly oddsOf: (mask: number) => SpareOdds
  /** The bowler's average frame. */
  readonly baseline: FrameOdds
  /**
   * For each speed step (softer, usual, firmer), MEANS figures per entry of a value table: mean pins of the first and
   * of the second ball, chance of a strike and of a spare, mean first-ball pins where a spare follows.
   */
  readonly meansByEntry: readonly Float64Array[]
}

/**
 * The baseline bowler's first balls: entry around the pocket with this multiple of the aiming error's spread at the
 * arrows. Chosen so that the elite level strikes about as often as published for elite men (61 %).
 */
const BASELINE_SPREAD_AT_PINS = 3.3
const BASELINE_OFFSET_METRES = boardsToMetres(2.5)
const BASELINE_ANGLE_RADIANS = degreesToRadians(4.5)
const BASELINE_SPEED_LOSS_METRES_PER_SECOND = 1.25
const BASELINE_NODES = 61

/** Everything a bowler's first ball can leave, with the bowler's own spare rates. */
export function bowlerOdds(profile: BowlerProfile): BowlerOdds {
  const oddsOf = spareOddsOf(profile)
  const entrySpeed = profile.strike.speedMetresPerSecond - BASELINE_SPEED_LOSS_METRES_PER_SECOND
  const means = keptByMask((mask) => meansOfLeave(mask, oddsOf(mask)))
  return {
    oddsOf,
    baseline: frameOdds(baselineOutcomes(profile, oddsOf, entrySpeed)),
    meansByEntry: [-1, 0, 1].map((step) => meansAt(entrySpeed + step * profile.speedStepMetresPerSecond, means)),
  }
}

/** A bowler's spare odds at any leave. */
export function spareOddsOf(profile: BowlerProfile): (mask: number) => SpareOdds {
  const spread = lateralSpreadAt(profile.spareError, PINS_METRES)
  return keptByMask((mask) => spareOdds(mask, spread))
}

const chances = newCarryDistribution()

function meansAt(speed: number, meansOf: (mask: number) => Float64Array): Float64Array {
  const table = new Float64Array(ENTRIES * MEANS)
  visitEntries((place, offset, tangent) => {
    carryDistribution(offset, arcTangent(tangent), speed, chances)
    for (let k = 0; k < chances.count; k++) {
      const of = meansOf(chances.mask[k])
      for (let m = 0; m < MEANS; m++) table[place * MEANS + m] += chances.chance[k] * of[m]
    }
  })
  return table
}

function meansOfLeave(mask: number, odds: SpareOdds): Float64Array {
  const felled = 10 - countPins(mask)
  const means = new Float64Array(MEANS)
  means[FELLED] = felled
  if (mask === 0) {
    means[STRUCK] = 1
    return means
  }
  means[FOLLOWING] = meanSecondBallPins({ felled, ...odds })
  means[CONVERTED] = odds.conversion
  means[FELLED_OF_SPARES] = odds.conversion * felled
  return means
}

/** A function of the leave that works each out once. */
function keptByMask<T>(compute: (mask: number) => T): (mask: number) => T {
  const kept = new Array<T | undefined>(MASKS).fill(undefined)
  return (mask) => {
    const known = kept[mask]
    if (known !== undefined) return known
    const value = compute(mask)
    kept[mask] = value
    return value
  }
}

function baselineOutcomes(
  profile: BowlerProfile,
  oddsOf: (mask: number) => SpareOdds,
  entrySpeed: number,
): FirstBallOutcome[] {
  const spread = BASELINE_SPREAD_AT_PINS * lateralSpreadAt(profile.error, ARROWS_METRES)
  const chanceOf = new Float64Array(MASKS)
  let total = 0
  for (let node = 0; node < BASELINE_NODES; node++) {
    const z = (6 * node) / (BASELINE_NODES - 1) - 3
    const weight = exponential((-z * z) / 2)
    carryDistribution(BASELINE_OFFSET_METRES + z * spread, BASELINE_ANGLE_RADIANS, entrySpeed, chances)
    for (let k = 0; k < chances.count; k++) {
      chanceOf[chances.mask[k]] += weight * chances.chance[k]
      total += weight * chances.chance[k]
    }
  }
  const outcomes: FirstBallOutcome[] = []
  for (let mask = 0; mask < MASKS; mask++)
    if (chanceOf[mask] > 0)
      outcomes.push({ felled: 10 - countPins(mask), chance: chanceOf[mask] / total, ...oddsOf(mask) })
  return outcomes
}
