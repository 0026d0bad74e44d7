import { advance } from '../../world/block/advance.js'
import type { BlockState } from '../../world/block/types.js'
import { FRAMES, type Scoring } from '../../world/scoring/frame.js'
import { type GameBalls, tally } from '../../world/scoring/game.js'
import { lostOnTrueOil } from '../debrief/ledger/throw-worths.js'
import { choose, type Policy } from '../policies/policies.js'

/** Who a player's block is held against: the rule of thumb, the best from what one had seen, and the best for one who sees the oil. */
export const COMPARED_POLICIES = ['thumb', 'fair', 'known'] as const satisfies readonly Policy[]
export type ComparedPolicy = (typeof COMPARED_POLICIES)[number]

/** A block as one of them bowled it. */
export interface ComparedBlock {
  /** Pins felled, game by game, ball by ball. */
  readonly games: readonly GameBalls[]
  /** Expected game pins that the choices in games lost against the best if the oil is seen, all luck left out. */
  readonly lostPins: number
}
export type Comparison = Readonly<Record<ComparedPolicy, ComparedBlock>>

export interface ComparisonStep {
  /** How much is played, 0 to 1. */
  readonly share: number
}

/**
 * Plays a block by every compared policy from its first throw on. Deliveries, pins and oil come from streams that are keyed by seed and
 * place alone, so that all of them meet the luck the player met. Yields after each throw.
 *
 * @param begun the block before its first throw
 */
export function* compareOnSameLuck(begun: BlockState): Generator<ComparisonStep, Comparison> {
  const thumb = yield* blockBy('thumb', begun)
  const fair = yield* blockBy('fair', begun)
  const known = yield* blockBy('known', begun)
  return { thumb, fair, known }
}

/** The block as one policy plays it. */
export function* blockBy(policy: ComparedPolicy, begun: BlockState): Generator<ComparisonStep, ComparedBlock> {
  const before = COMPARED_POLICIES.indexOf(policy)
  let state = begun
  let lostPins = 0
  while (state.spot) {
    const decision = choose(policy, state)
    if (policy !== 'known' && state.spot.phase === 'game') lostPins += lostOnTrueOil(state, decision)
    state = advance(state, decision)
    yield { share: (before + playedShare(state)) / COMPARED_POLICIES.length }
  }
  return { games: state.balls, lostPins }
}

function playedShare({ spot, setup }: BlockState): number {
  if (!spot) return 1
  return spot.phase === 'practice' ? 0 : (spot.game - 1 + (spot.frame - 1) / FRAMES) / setup.games
}

/** What everybody had scored when the player had bowled so many frames. */
export interface SameLuckScores {
  readonly you: number
  readonly others: Readonly<Record<ComparedPolicy, number>>
  /** Frames that count here, all of them where the block was bowled to its end. */
  readonly frames: number
  readonly isWhole: boolean
}

/** The scores after the frames that the player has finished; null where none is. */
export function sameLuckScores({ balls, setup }: BlockState, comparison: Comparison): SameLuckScores | null {
  const { scoring, games } = setup
  const frames = balls.reduce(
    (sum, game) => sum + tally(scoring, game).frames.filter(({ complete }) => complete).length,
    0,
  )
  if (frames === 0) return null
  const scored = (of: readonly GameBalls[]): number => scoreThrough(scoring, of, frames)
  return {
    you: scored(balls),
    others: {
      thumb: scored(comparison.thumb.games),
      fair: scored(comparison.fair.games),
      known: scored(comparison.known.games),
    },
    frames,
    isWhole: frames === games * FRAMES,
  }
}

/** Pins certain after the first frames of a block: what is felled later adds nothing to them. */
function scoreThrough(scoring: Scoring, games: readonly GameBalls[], frames: number): number {
  return games.reduce((sum, balls, game) => {
    const left = Math.min(FRAMES, frames - game * FRAMES)
    return left <= 0 ? sum : sum + tally(scoring, balls.slice(0, left)).total
  }, 0)
}
