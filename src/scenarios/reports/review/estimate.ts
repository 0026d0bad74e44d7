import { studentPoint95 } from './student.js'

/** A mean over blocks with the 95 % interval of it; no interval for a single block. Blocks, not throws, are independent. */
export interface Estimate {
  readonly mean: number
  readonly low: number | null
  readonly high: number | null
  readonly blocks: number
}

/** A block's figure, and how much it counts: its graded choices. */
export interface Weighed {
  readonly value: number
  readonly weight: number
}

/** A mean with its standard error and the degrees of freedom of that; no error where there is one block or none. */
interface Mean {
  readonly mean: number
  readonly standardError: number | null
  readonly degrees: number
  readonly blocks: number
}

/**
 * The weighted mean with its standard error by linearisation, as of a ratio (Cochran, Sampling Techniques, chapter 6; from memory):
 * s² = n/(n − 1) · Σ w²(x − mean)² / (Σ w)². With equal weights it is the ordinary mean and its error.
 */
export function meanOf(blocks: readonly Weighed[]): Mean {
  const count = blocks.length
  const total = blocks.reduce((sum, { weight }) => sum + weight, 0)
  const mean = total > 0 ? blocks.reduce((sum, { value, weight }) => sum + value * weight, 0) / total : 0
  if (count < 2 || total <= 0) return { mean, standardError: null, degrees: 0, blocks: count }
  const squares = blocks.reduce((sum, { value, weight }) => sum + (weight * (value - mean)) ** 2, 0)
  const standardError = Math.sqrt((count / (count - 1)) * squares) / total
  return { mean, standardError, degrees: count - 1, blocks: count }
}

/** The mean of some blocks, each counting by its weight, with its 95 % interval. */
export function estimateOf(blocks: readonly Weighed[]): Estimate {
  return withInterval(meanOf(blocks))
}

function withInterval({ mean, standardError, degrees, blocks }: Mean): Estimate {
  if (standardError === null) return { mean, low: null, high: null, blocks }
  const reach = studentPoint95(degrees) * standardError
  return { mean, low: mean - reach, high: mean + reach, blocks }
}

/** How much a later mean differs from an earlier one. */
interface Change {
  readonly pins: number
  readonly low: number | null
  readonly high: number | null
}

/** The difference of two means with its 95 % interval, for unequal spreads (Welch, Biometrika 34, 1947; degrees rounded down). */
export function changeBetween(before: Mean, after: Mean): Change {
  const pins = after.mean - before.mean
  if (before.standardError === null || after.standardError === null) return { pins, low: null, high: null }
  const [first, second] = [before.standardError ** 2, after.standardError ** 2]
  const variance = first + second
  const degrees = variance === 0 ? 1 : variance ** 2 / (first ** 2 / before.degrees + second ** 2 / after.degrees)
  const reach = studentPoint95(Math.floor(degrees)) * Math.sqrt(variance)
  return { pins, low: pins - reach, high: pins + reach }
}
