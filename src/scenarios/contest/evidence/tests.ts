import { stream } from '../../../sim/random.js'

/** Shuffles of a permutation test; p-values are whole multiples of one over this and one. */
const SHUFFLES = 9999

const draws = () => stream({ seed: 'contest-evidence', game: 0, frame: 0, ball: 0, purpose: 'study' })

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/**
 * How probable a sum as low as this is if each value might as well have had the other sign: a sign-flip test, one-sided, by random
 * flips with the observed one counted in (Phipson and Smyth, 2010).
 */
export function signFlipLow(values: readonly number[]): number {
  const observed = sumOf(values)
  const draw = draws()
  let asLow = 0
  for (let shuffle = 0; shuffle < SHUFFLES; shuffle++) {
    let sum = 0
    for (const value of values) sum += draw() < 0.5 ? value : -value
    if (sum <= observed + 1e-12) asLow++
  }
  return (asLow + 1) / (SHUFFLES + 1)
}

/** Ranks from 1, those of equals shared. */
export function ranksOf(values: readonly number[]): number[] {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!)
  const ranks = new Array<number>(values.length)
  for (let from = 0; from < order.length; ) {
    let to = from
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++
    for (let at = from; at < to; at++) ranks[order[at]!] = (from + 1 + to) / 2
    from = to
  }
  return ranks
}

/** Pearson's correlation; 0 where one of the two never varies. */
export function correlation(xs: readonly number[], ys: readonly number[]): number {
  const [meanX, meanY] = [sumOf(xs) / xs.length, sumOf(ys) / ys.length]
  const about = xs.map((x, index) => (x - meanX) * (ys[index]! - meanY))
  const spread = (values: readonly number[], mean: number): number => sumOf(values.map((value) => (value - mean) ** 2))
  const scale = Math.sqrt(spread(xs, meanX) * spread(ys, meanY))
  return scale === 0 ? 0 : sumOf(about) / scale
}

/** Spearman's rank correlation, and how probable one as far below 0 is by chance: a permutation test, one-sided. */
export function rankCorrelationLow(
  xs: readonly number[],
  ys: readonly number[],
): { readonly rho: number; readonly p: number } {
  const [rankX, rankY] = [ranksOf(xs), ranksOf(ys)]
  const rho = correlation(rankX, rankY)
  const draw = draws()
  const shuffled = [...rankY]
  let asLow = 0
  for (let shuffle = 0; shuffle < SHUFFLES; shuffle++) {
    for (let at = shuffled.length - 1; at > 0; at--) {
      const other = Math.floor(draw() * (at + 1))
      ;[shuffled[at], shuffled[other]] = [shuffled[other]!, shuffled[at]!]
    }
    if (correlation(rankX, shuffled) <= rho + 1e-12) asLow++
  }
  return { rho, p: (asLow + 1) / (SHUFFLES + 1) }
}

/** How probable `hits` or more of `trials` are at a chance of `chance` each: the binomial distribution's upper tail. */
export function binomialHigh(hits: number, trials: number, chance: number): number {
  if (hits <= 0) return 1
  let term = (1 - chance) ** trials
  let below = 0
  for (let k = 0; k < hits; k++) {
    below += term
    term *= ((trials - k) / (k + 1)) * (chance / (1 - chance))
  }
  return Math.max(0, Math.min(1, 1 - below))
}
