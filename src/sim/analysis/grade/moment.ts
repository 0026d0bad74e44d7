import type { BlockState, Decision, Spot } from '../../world/block/types.js'
import { mirrorMask } from '../../world/pins/leaves.js'
import { averageWeights } from '../value/bowler-pricing.js'
import { weightsOfNextBall } from '../value/score-state.js'
import type { FrameOdds, FrameWeights } from '../value/worth.js'
import { facesNewRack, playerView } from '../view/player-view.js'
import { laneBaseline } from './lane-baseline.js'

/** What pins are counted by: the lane alone, averaged over all scores, or the game as it stands. */
export type Counting = 'lane' | 'score'

/** A throw to be decided, as everyone on the lanes sees it. Nothing of the oil and nothing of what comes is in it. */
export interface Moment {
  readonly kind: 'first-ball' | 'spare' | 'practice'
  readonly lane: number
  /** Pins that stand, from the bowler's side as a right-hander's. */
  readonly standing: number
  /** The bowler's average frame on these lanes. */
  readonly baseline: FrameOdds
  readonly weights: FrameWeights
  /** What one would throw who changes nothing: the last line on this lane, else the line the panel starts from. */
  readonly stay: Decision
  /** Whether what a throw would teach counts: while there are first balls to come. */
  readonly isTeaching: boolean
  /** First balls that are still to come on this oil after this throw. */
  readonly throwsToCome: number
}

const FRAMES = 10

/**
 * The throw that a block waits for.
 * @param alike lanes that carry the same oil as this one, itself included
 * @throws RangeError when the block is over
 */
export function momentOf(state: BlockState, alike: readonly number[], counting: Counting = 'lane'): Moment {
  const { setup, spot, standing } = state
  const view = playerView(state)
  if (!spot || !view) throw new RangeError('The block is over; there is nothing left to decide.')
  const newRack = facesNewRack(state)
  const baseline = laneBaseline(setup, state.seed)
  const toCome = throwsToCome(state, spot, alike)
  return {
    kind: spot.phase === 'practice' ? 'practice' : newRack ? 'first-ball' : 'spare',
    lane: spot.lane,
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
    baseline,
    weights: counting === 'lane' ? averageWeights(setup, baseline) : scoreWeights(state, spot, baseline),
    stay: view.suggestion,
    isTeaching: newRack && (spot.phase === 'practice' || toCome > 0),
    throwsToCome: toCome,
  }
}

function scoreWeights({ setup, balls }: BlockState, spot: Spot, baseline: FrameOdds): FrameWeights {
  if (spot.phase === 'practice') return averageWeights(setup, baseline)
  const weights = weightsOfNextBall(setup.scoring, balls[spot.game - 1] ?? [], baseline)
  if (!weights) throw new RangeError('The game is over.')
  return weights
}

function throwsToCome({ setup, lanes }: BlockState, spot: Spot, alike: readonly number[]): number {
  let count = 0
  for (let game = Math.max(1, spot.game); game <= setup.games; game++)
    for (let frame = game === spot.game ? spot.frame + 1 : 1; frame <= FRAMES; frame++)
      if (alike.includes((frame - 1) % lanes.length)) count++
  return count
}
