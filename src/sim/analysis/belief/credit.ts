import { exponential, naturalLogarithm } from '../../exact-math.js'
import type { Blur } from './observation-model.js'

/**
 * Observations count less than the model says, since no hypothesis is the true lane; those of a throw whose aim is not
 * told less still. Tuned so that intervals cover as often as they say (study belief-calibration).
 */
export const TRUST = { lineTold: 0.55, lineUntold: 0.35 } as const
/** Share of a likelihood that is the same for all, so that no one throw can rule a hypothesis out. */
const FLOOR = 1e-3
export const BLUR: Blur = { breakpointBoards: 0.35, breakpointFeet: 1.1, entryBoards: 0.6 }

/**
 * How much a throw speaks for a hypothesis: the logarithm of its likelihood against the mean one, tempered. Zero where
 * nothing that was seen is possible under any.
 * @param trust what of the logarithm counts
 */
export function creditOf(likelihood: number, meanLikelihood: number, trust: number): number {
  if (!(meanLikelihood > 0)) return 0
  return trust * naturalLogarithm((1 - FLOOR) * (likelihood / meanLikelihood) + FLOOR)
}

/** Weighted mean of likelihoods. */
export function meanUnder(weights: Float64Array, likelihoods: Float64Array): number {
  let mean = 0
  for (let i = 0; i < weights.length; i++) mean += weights[i] * likelihoods[i]
  return mean
}

/** Multiplies weights by the credit of tempered likelihoods, each counted against their mean. */
export function reweigh(weights: Float64Array, likelihoods: Float64Array, trust: number): void {
  const mean = meanUnder(weights, likelihoods)
  if (!(mean > 0)) return
  let sum = 0
  for (let i = 0; i < weights.length; i++) {
    weights[i] *= exponential(creditOf(likelihoods[i], mean, trust))
    sum += weights[i]
  }
  for (let i = 0; i < weights.length; i++) weights[i] /= sum
}
