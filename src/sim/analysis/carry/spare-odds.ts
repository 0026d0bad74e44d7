import { exponential } from '../../exact-math.js'
import { inchesToMetres, metresToInches } from '../../units.js'
import { countPins, FULL_RACK, mirrorMask } from '../../world/pins/leaves.js'
import { decodeSpares } from './carry-format.js'
import { CANONICAL_LEAVES, SPARE_OFFSETS_INCHES, spareThrows } from './carry-grid.js'
import { SPARE_CURVES_TEXT } from './carry-table-data.js'

/** What a straight ball does to a leave when it crosses the head pin's row at one place. */
export interface SparePoint {
  readonly conversion: number
  readonly meanPins: number
}

/** What a bowler may expect of a leave at their best aim. */
export interface SpareOdds {
  readonly conversion: number
  /** Mean pins felled when the spare is missed; 0 when it never is. */
  readonly missPins: number
  readonly bestOffsetMetres: number
}

interface SpareCurve {
  readonly conversion: Float64Array
  readonly meanPins: Float64Array
}

const POINTS = SPARE_OFFSETS_INCHES.length
const FIRST_INCHES = SPARE_OFFSETS_INCHES[0]!
const STEP_INCHES = SPARE_OFFSETS_INCHES[1]! - FIRST_INCHES

let curves: readonly (SpareCurve | undefined)[] | undefined

function decodeCurves(): readonly (SpareCurve | undefined)[] {
  const byMask = new Array<SpareCurve | undefined>(FULL_RACK + 1).fill(undefined)
  const samples = decodeSpares(SPARE_CURVES_TEXT, CANONICAL_LEAVES.length, POINTS)
  for (const [index, mask] of CANONICAL_LEAVES.entries()) {
    const throws = spareThrows(countPins(mask))
    const conversion = Float64Array.from(samples[index]!, (sample) => sample.conversions / throws)
    const meanPins = Float64Array.from(samples[index]!, (sample) => sample.pins / throws)
    const flipped = { conversion: conversion.toReversed(), meanPins: meanPins.toReversed() }
    if (mirrorMask(mask) === mask) {
      const even = (values: Float64Array, others: Float64Array) => values.map((value, at) => (value + others[at]!) / 2)
      byMask[mask] = {
        conversion: even(conversion, flipped.conversion),
        meanPins: even(meanPins, flipped.meanPins),
      }
    } else {
      byMask[mask] = { conversion, meanPins }
      byMask[mirrorMask(mask)] = flipped
    }
  }
  return byMask
}

function curveOf(mask: number): SpareCurve {
  curves ??= decodeCurves()
  const curve = curves[mask]
  if (curve === undefined) throw new RangeError(`leave ${mask} is not a mask of 1 to ${FULL_RACK}`)
  return curve
}

/** Value of a curve between its points; 0 beyond them, where the ball is in the gutter. */
function readCurve(values: Float64Array, offsetInches: number): number {
  const along = (offsetInches - FIRST_INCHES) / STEP_INCHES
  if (along < -0.5 || along > POINTS - 0.5) return 0
  const index = Math.max(0, Math.min(POINTS - 2, Math.floor(along)))
  const share = Math.max(0, Math.min(1, along - index))
  return values[index]! * (1 - share) + values[index + 1]! * share
}

/** Chance of a spare and mean pins felled by a straight ball that crosses the head pin's row at `offsetMetres`. */
export function spareCurveAt(mask: number, offsetMetres: number): SparePoint {
  if (mask === 0) return { conversion: 1, meanPins: 0 }
  const curve = curveOf(mask)
  const inches = metresToInches(offsetMetres)
  return { conversion: readCurve(curve.conversion, inches), meanPins: readCurve(curve.meanPins, inches) }
}

/** Half width of the spread that is summed, in standard deviations, and points in each half. */
const SPREAD_REACH = 3
const SPREAD_POINTS = 18
const AIM_STEP_INCHES = 0.25
const EQUAL_WORTH = 1e-9
/** A spare is worth about this many pins beside its own: the next ball counts twice. */
const SPARE_BONUS_PINS = 9

const SPREAD_WEIGHTS: readonly number[] = (() => {
  const raw = Array.from({ length: 2 * SPREAD_POINTS + 1 }, (_, index) => {
    const deviations = ((index - SPREAD_POINTS) / SPREAD_POINTS) * SPREAD_REACH
    return exponential(-0.5 * deviations * deviations)
  })
  const total = raw.reduce((sum, weight) => sum + weight, 0)
  return raw.map((weight) => weight / total)
})()

function smear(values: Float64Array, aimInches: number, spreadInches: number): number {
  let sum = 0
  for (const [index, weight] of SPREAD_WEIGHTS.entries()) {
    const deviations = ((index - SPREAD_POINTS) / SPREAD_POINTS) * SPREAD_REACH
    sum += weight * readCurve(values, aimInches + deviations * spreadInches)
  }
  return sum
}

/**
 * A bowler's chance at a leave with straight balls that scatter by `lateralSpreadMetres` (standard deviation, at the
 * head pin's row) about the best aim: the one with most pins, a spare's bonus counted.
 */
export function spareOdds(mask: number, lateralSpreadMetres: number): SpareOdds {
  if (mask === 0) return { conversion: 1, missPins: 0, bestOffsetMetres: 0 }
  const curve = curveOf(mask)
  const spreadInches = metresToInches(lateralSpreadMetres)
  let best = -1
  let firstAim = 0
  let lastAim = 0
  for (let aim = FIRST_INCHES; aim <= -FIRST_INCHES; aim += AIM_STEP_INCHES) {
    const worth =
      smear(curve.meanPins, aim, spreadInches) + SPARE_BONUS_PINS * smear(curve.conversion, aim, spreadInches)
    if (worth > best + EQUAL_WORTH) {
      best = worth
      firstAim = aim
      lastAim = aim
    } else if (worth > best - EQUAL_WORTH && aim - lastAim < 1.5 * AIM_STEP_INCHES) {
      lastAim = aim
    }
  }
  // Of neighbouring aims that are equally good, the middle one.
  const bestInches = (firstAim + lastAim) / 2
  const conversion = Math.min(1, smear(curve.conversion, bestInches, spreadInches))
  const pins = smear(curve.meanPins, bestInches, spreadInches)
  const missPins = conversion < 1 ? Math.max(0, (pins - conversion * countPins(mask)) / (1 - conversion)) : 0
  return { conversion, missPins, bestOffsetMetres: inchesToMetres(bestInches) }
}
