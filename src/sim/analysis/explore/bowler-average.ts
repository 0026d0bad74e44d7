import { advance } from '../../world/block/advance.js'
import { beginBlock } from '../../world/block/begin.js'
import type { BlockSetup } from '../../world/block/types.js'
import { tally } from '../../world/scoring/game.js'
import { choose } from '../policies/policies.js'

/** What a bowler averages over the games simulated so far. */
export interface BowlerAverage {
  readonly games: number
  readonly mean: number
  /** Half the width of the interval that holds the true average 19 times of 20; null for a single game. */
  readonly halfWidth: number | null
}

/** Two-sided 95 % point of the normal distribution (any table of it); the games of a block are taken as independent. */
const NINETEEN_OF_TWENTY = 1.96

/** Score of the first game of a block by rule of thumb: from the line one starts with, following the misses. */
export function thumbGame(setup: BlockSetup, seed: string): number {
  let state = beginBlock({ ...setup, games: 1 }, seed)
  while (state.spot) state = advance(state, choose('thumb', state))
  return tally(setup.scoring, state.balls[0] ?? []).total
}

/** Simulates games one after the other, each under a seed of its own, and yields the average after each. */
export function* averageSteps(setup: BlockSetup, games: number): Generator<BowlerAverage, BowlerAverage> {
  const scores: number[] = []
  for (let game = 1; ; game++) {
    scores.push(thumbGame(setup, `average-${game}`))
    const average = averageOf(scores)
    if (game >= games) return average
    yield average
  }
}

/** Mean of scores and its interval: mean ± 1.96 s / √n with the sample standard deviation s (any textbook of statistics). */
export function averageOf(scores: readonly number[]): BowlerAverage {
  const games = scores.length
  const mean = scores.reduce((sum, score) => sum + score, 0) / games
  if (games < 2) return { games, mean, halfWidth: null }
  const variance = scores.reduce((sum, score) => sum + (score - mean) * (score - mean), 0) / (games - 1)
  return { games, mean, halfWidth: NINETEEN_OF_TWENTY * Math.sqrt(variance / games) }
}
