import { exponential, naturalLogarithm, normalDistribution } from '../../../sim/exact-math.js'
import { meanOf, type Weighed } from './estimate.js'

/** A player's mean drawn towards the group's, with what is known of it. */
export interface Pooled {
  readonly mean: number
  /** Null where nothing tells how unsure it is. */
  readonly standardError: number | null
  /** Where the true mean lies below with a chance of `share`, between 0 and 1; null where nothing tells how unsure it is. */
  readonly quantile: (share: number) => number | null
  /** How far it was drawn: 0 is the player's own mean, 1 the group's. */
  readonly drawnShare: number
}

/** Below this many players there is too little to tell how much players differ; each stands alone, with the spread they share. */
const LEAST_PLAYERS = 4
/** Values of τ that are averaged over. */
const SPREADS = 40
const HALVINGS = 30
/** Standard errors beyond which no quantile that is asked for lies. */
const REACH = 8

/**
 * Partial pooling of several players' block figures: the hierarchical normal model. A player's blocks scatter about the player's own mean
 * with one spread for all, and the players' means about the group's:
 *
 *     x(j, i) ~ N(θ(j), σ² / w(j, i)),  θ(j) ~ N(μ, τ²)
 *
 * σ² is pooled within players. For a given τ everything is in closed form: with v(j) the variance of a player's own mean y(j) and
 * B = v/(v + τ²), θ(j) is normal about Bμ̂ + (1 − B)y with variance v(1 − B) + B² var μ̂ (Gelman et al., Bayesian Data Analysis, chapter 5).
 * τ itself is averaged over, by how well it fits (the same chapter's p(τ | y)), with all values alike likely beforehand, as is advised
 * for five groups or more (Gelman, Prior distributions for variance parameters in hierarchical models, Bayesian Analysis 1, 2006); with four
 * it is proper still. What is known of a player is therefore a mixture of normals, and intervals are its quantiles, not so many standard
 * errors: a mixture is pointed and has long tails. All from memory; `npm run study pooled-groups` checks that intervals cover what they say.
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
  if (degrees === 0) return own.map(({ mean }) => unsure(mean, 0))
  const spread = within / degrees
  const variances = weights.map((weight) => (weight > 0 ? spread / weight : Number.POSITIVE_INFINITY))
  const there = own.flatMap(({ mean }, at) => (weights[at]! > 0 ? [{ mean, variance: variances[at]! }] : []))
  if (there.length < LEAST_PLAYERS || spread === 0) {
    return own.map(({ mean }, at) =>
      weights[at]! > 0 ? mixed([{ weight: 1, mean, variance: variances[at]! }], 0) : unsure(mean, 0),
    )
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

/** One normal of a mixture; weights of a mixture add up to 1. */
interface Component extends Measured {
  readonly weight: number
}

/** A value of τ² with its weight, and what the group's mean is known to be with it. */
interface Spread {
  readonly between: number
  readonly weight: number
  readonly centre: Measured
}

function drawn(players: readonly Measured[], there: readonly Measured[]): Pooled[] {
  const spreads = spreadsOf(there)
  return players.map(({ mean, variance }) => {
    if (!Number.isFinite(variance))
      return unsure(
        sumOf(spreads, ({ weight, centre }) => weight * centre.mean),
        1,
      )
    const components = spreads.map(({ between, weight, centre }) => {
      const share = variance / (variance + between)
      return {
        weight,
        mean: share * centre.mean + (1 - share) * mean,
        variance: variance * (1 - share) + share ** 2 * centre.variance,
      }
    })
    return mixed(
      components,
      sumOf(spreads, ({ between, weight }) => (weight * variance) / (variance + between)),
    )
  })
}

/** τ over its whole range: s tan φ with φ evenly over a right angle and s² the harmonic mean of the players' variances. */
function spreadsOf(there: readonly Measured[]): Spread[] {
  const typical = there.length / sumOf(there, ({ variance }) => 1 / variance)
  const fits = Array.from({ length: SPREADS }, (_, at) => {
    // cos² φ by the half-angle formula needs no trigonometry beyond an even grid of its own: u = tan(φ/2) over 0 to 1.
    const half = (at + 0.5) / SPREADS
    const cosine = (1 - half ** 2) / (1 + half ** 2)
    const between = typical * (1 / cosine ** 2 - 1)
    const precision = sumOf(there, ({ variance }) => 1 / (variance + between))
    const mean = sumOf(there, (one) => one.mean / (one.variance + between)) / precision
    const logFit =
      -0.5 * naturalLogarithm(precision) -
      0.5 *
        sumOf(
          there,
          (one) => naturalLogarithm(one.variance + between) + (one.mean - mean) ** 2 / (one.variance + between),
        )
    // How much of τ a step of u takes up: dτ/dφ is s/cos² φ, dφ/du is 2/(1 + u²).
    const step = 1 / (cosine ** 2 * (1 + half ** 2))
    return { between, centre: { mean, variance: 1 / precision }, logFit, step }
  })
  const best = Math.max(...fits.map(({ logFit }) => logFit))
  const weighed = fits.map((one) => ({ ...one, weight: one.step * exponential(one.logFit - best) }))
  const all = sumOf(weighed, ({ weight }) => weight)
  return weighed.map(({ between, centre, weight }) => ({ between, centre, weight: weight / all }))
}

function mixed(components: readonly Component[], drawnShare: number): Pooled {
  const mean = sumOf(components, (one) => one.weight * one.mean)
  const standardError = Math.sqrt(sumOf(components, (one) => one.weight * (one.variance + (one.mean - mean) ** 2)))
  const widest = Math.max(...components.map(({ variance }) => Math.sqrt(variance)))
  const below = (value: number): number =>
    sumOf(components, (one) => one.weight * normalDistribution((value - one.mean) / Math.sqrt(one.variance)))
  const quantile = (share: number): number => {
    let low = Math.min(...components.map((one) => one.mean)) - REACH * widest
    let high = Math.max(...components.map((one) => one.mean)) + REACH * widest
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (low + high) / 2
      if (below(middle) < share) low = middle
      else high = middle
    }
    return (low + high) / 2
  }
  return { mean, standardError, quantile, drawnShare }
}

const unsure = (mean: number, drawnShare: number): Pooled => ({
  mean,
  standardError: null,
  quantile: () => null,
  drawnShare,
})

const sumOf = <T>(all: readonly T[], of: (one: T) => number): number => all.reduce((sum, one) => sum + of(one), 0)
