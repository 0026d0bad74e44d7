import { type BowlerProfile, lateralSpreadAt } from '../bowler/profile.js'
import { ARROWS_METRES } from '../bowler/release.js'
import { arcTangent, exponential } from '../exact-math.js'
import { carryDistribution, newCarryDistribution } from '../pins/carry-table.js'
import { countPins, FULL_RACK } from '../pins/leaves.js'
import { type SpareOdds, spareOdds } from '../pins/spare-odds.js'
import type { Scoring } from '../scoring/game.js'
import {
  type FirstBallOutcome,
  type FrameOdds,
  type FrameWeights,
  frameOdds,
  frameWeights,
  stationaryBonus,
  weighFrame,
  weighLeave,
} from '../scoring/worth.js'
import { boardsToMetres, degreesToRadians, feetToMetres } from '../units.js'
import { buildValueTable, type ValueTable } from './value-table.js'

const PINS_METRES = feetToMetres(60)
const MASKS = FULL_RACK + 1

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

/**
 * The baseline bowler's first balls: entry around the pocket with this multiple of the aiming error's spread at the
 * arrows. Chosen so that the elite level strikes about as often as published for elite men (61 %).
 */
const BASELINE_SPREAD_AT_PINS = 3.3
const BASELINE_OFFSET_METRES = boardsToMetres(2.5)
const BASELINE_ANGLE_RADIANS = degreesToRadians(4.5)
const BASELINE_SPEED_LOSS_METRES_PER_SECOND = 1.25
const BASELINE_NODES = 61

/** Prices everything a bowler's first ball can leave, with the bowler's own spare rates; the score is left out. */
export function pricingFor(profile: BowlerProfile, scoring: Scoring): Pricing {
  const oddsOf = spareOddsOf(profile)
  const entrySpeed = profile.strike.speedMetresPerSecond - BASELINE_SPEED_LOSS_METRES_PER_SECOND
  const baseline = frameOdds(baselineOutcomes(profile, oddsOf, entrySpeed))
  const weights = frameWeights(scoring, stationaryBonus(baseline), baseline)
  const average = weighFrame(weights, baseline)
  const worthOfLeave = keptByMask(
    (mask) => weighLeave(weights, { felled: 10 - countPins(mask), ...oddsOf(mask) }) - average,
  )
  const tables = [-1, 0, 1].map((step) => {
    const speed = entrySpeed + step * profile.speedStepMetresPerSecond
    return buildValueTable((offset, tangent) => meanWorth(worthOfLeave, offset, tangent, speed))
  })
  return { worthOfLeave, gutterWorth: worthOfLeave(FULL_RACK), tables, weights, baseline }
}

const chances = newCarryDistribution()

function meanWorth(worthOfLeave: (mask: number) => number, offset: number, tangent: number, speed: number): number {
  carryDistribution(offset, arcTangent(tangent), speed, chances)
  let sum = 0
  for (let k = 0; k < chances.count; k++) sum += chances.chance[k] * worthOfLeave(chances.mask[k])
  return sum
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

/** A bowler's spare odds at any leave. */
export function spareOddsOf(profile: BowlerProfile): (mask: number) => SpareOdds {
  const spread = lateralSpreadAt(profile.spareError, PINS_METRES)
  return keptByMask((mask) => spareOdds(mask, spread))
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
