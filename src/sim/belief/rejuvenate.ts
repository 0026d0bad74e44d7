import { drawNormal, type RandomSource } from '../random.js'
import { type PastThrow, replayPast } from './absorb.js'
import { COORDINATES, effectiveSize, type HypothesisSet, layHypotheses, pickSystematically } from './hypotheses.js'
import type { PatternRanges } from './pattern-ranges.js'

/** Share of a coordinate's spread that is drawn afresh. */
const FRESH_SHARE = 0.3
/** Smallest fresh spread, so that a set that fell onto one hypothesis opens again. */
const LEAST_FRESH_SPREAD = 0.06

/**
 * Replaces a set that has worn down to few hypotheses by an equally weighted one around them: coordinates are pulled to
 * their mean and spread out again so that mean and covariance stay (Liu & West 2001, from memory) but for what so few
 * could not tell; then every pattern is laid fresh and all past throws roll over it again. The fresh part is a
 * difference of two hypotheses drawn by weight, which has twice their covariance.
 */
export function rejuvenate(
  set: HypothesisSet,
  ranges: PatternRanges,
  mirrored: boolean,
  past: readonly PastThrow[],
  random: RandomSource,
): void {
  const { size, coordinates, weights } = set
  const old = coordinates.slice()
  const means = new Float64Array(COORDINATES)
  for (let i = 0; i < size; i++) for (let c = 0; c < COORDINATES; c++) means[c] += weights[i] * old[i * COORDINATES + c]
  const parents = pickSystematically(weights, size, random())
  const widen = widening(effectiveSize(weights))
  const pull = widen * Math.sqrt(1 - FRESH_SHARE * FRESH_SHARE)
  const fresh = widen * FRESH_SHARE
  for (let i = 0; i < size; i++) {
    const parent = parents[i]
    const first = parents[Math.floor(random() * size)]
    const second = parents[Math.floor(random() * size)]
    for (let c = 0; c < COORDINATES; c++) {
      const apart = (old[first * COORDINATES + c] - old[second * COORDINATES + c]) / Math.SQRT2
      coordinates[i * COORDINATES + c] =
        means[c] +
        pull * (old[parent * COORDINATES + c] - means[c]) +
        fresh * apart +
        LEAST_FRESH_SPREAD * drawNormal(random)
    }
  }
  weights.fill(1 / size)
  layHypotheses(set, ranges, mirrored)
  for (let i = 0; i < size; i++) replayPast(set, i, past)
}

/**
 * A spread told by few draws is too small, and their mean is off by a share of it: variance grows by (1 + 1/n)/(1 − 1/n),
 * the predictive variance of a normal sample against its uncorrected one (any statistics text).
 */
function widening(effective: number): number {
  return effective > 2 ? Math.sqrt((1 + 1 / effective) / (1 - 1 / effective)) : Math.sqrt(3)
}
