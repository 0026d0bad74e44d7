import { meanOf, type Weighed } from './estimate.js'

/** A player's mean drawn towards the group's, with its standard error. */
export interface Pooled {
  readonly mean: number
  readonly standardError: number | null
  /** How far it was drawn: 0 is the player's own mean, 1 the group's. */
  readonly drawnShare: number
}

/** Below this many players there is too little to tell how much players differ; each stands alone, with the spread they share. */
const LEAST_PLAYERS = 4

/**
 * Partial pooling of several players' block figures: the hierarchical normal model in closed form. A player's blocks scatter about
 * the player's own mean with one spread for all, and the players' means about the group's:
 *
 *     x(j, i) ~ N(θ(j), σ² / w(j, i)),  θ(j) ~ N(μ, τ²)
 *
 * σ² is pooled within players; τ² comes from the spread between them by moments (DerSimonian and Laird, Controlled Clinical Trials 7,
 * 1986); a player's mean is drawn to μ by B = (J − 3)/(J − 1) · v/(v + τ²) and its variance is v(1 − (1 − 1/J) B) + 2/(J − 3) · B²(y − μ)²
 * (Morris, Journal of the American Statistical Association 78, 1983; Gelman et al., Bayesian Data Analysis, chapter 5, has the model). All
 * from memory; `npm run study pooled-groups` checks that intervals cover what they say.
 *
 * @param players blocks of each, with weights; a player without blocks is given the group's mean
 */
export function pooledMeans(players: readonly (readonly Weighed[])[]): Pooled[] {
  const own = players.map(meanOf)
  const weights = players.map((blocks) => blocks.reduce((sum, { weight }) => sum + weight, 0))
  const degrees = players.reduce((sum, blocks) => sum + Math.max(0, blocks.length - 1), 0)
  const within = players.reduce(
    (sum, blocks, at) =>
      sum + blocks.reduce((all, { value, weight }) => all + weight * (value - own[at]!.mean) ** 2, 0),
    0,
  )
  if (degrees === 0) return own.map(({ mean }) => ({ mean, standardError: null, drawnShare: 0 }))
  const spread = within / degrees
  const variances = weights.map((weight) => (weight > 0 ? spread / weight : Number.POSITIVE_INFINITY))
  const there = own.flatMap(({ mean }, at) => (weights[at]! > 0 ? [{ mean, variance: variances[at]! }] : []))
  if (there.length < LEAST_PLAYERS || spread === 0) {
    return own.map(({ mean }, at) => ({
      mean,
      standardError: weights[at]! > 0 ? Math.sqrt(variances[at]!) : null,
      drawnShare: 0,
    }))
  }
  return drawn(
    own.map(({ mean }, at) => ({ mean, variance: variances[at]! })),
    there,
  )
}

interface Measured {
  readonly mean: number
  readonly variance: number
}

function drawn(players: readonly Measured[], there: readonly Measured[]): Pooled[] {
  const count = there.length
  const between = betweenVariance(there)
  const centre = centreOf(there, between)
  return players.map(({ mean, variance }) => {
    if (!Number.isFinite(variance)) return { mean: centre, standardError: null, drawnShare: 1 }
    const share = ((count - 3) / (count - 1)) * (variance / (variance + between))
    const left = variance * (1 - ((count - 1) / count) * share)
    const unsure = (2 / (count - 3)) * share ** 2 * (mean - centre) ** 2
    return {
      mean: share * centre + (1 - share) * mean,
      standardError: Math.sqrt(left + unsure),
      drawnShare: share,
    }
  })
}

function betweenVariance(there: readonly Measured[]): number {
  const precisions = there.map(({ variance }) => 1 / variance)
  const all = precisions.reduce((sum, one) => sum + one, 0)
  const squared = precisions.reduce((sum, one) => sum + one * one, 0)
  const centre = centreOf(there, 0)
  const scatter = there.reduce((sum, { mean, variance }) => sum + (mean - centre) ** 2 / variance, 0)
  return Math.max(0, (scatter - (there.length - 1)) / (all - squared / all))
}

function centreOf(there: readonly Measured[], between: number): number {
  const precisions = there.map(({ variance }) => 1 / (variance + between))
  const all = precisions.reduce((sum, one) => sum + one, 0)
  return there.reduce((sum, { mean }, at) => sum + mean * precisions[at]!, 0) / all
}
