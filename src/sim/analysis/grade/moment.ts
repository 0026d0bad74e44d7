import type { BlockState, Decision, Spot } from '../../world/block/types.js'
import { mirrorMask } from '../../world/pins/leaves.js'
import { averageWeights, oddsOf } from '../value/bowler-pricing.js'
import { weightsOfNextBall } from '../value/score-state.js'
import type { FrameWeights } from '../value/worth.js'
import { facesNewRack, playerView } from '../view/player-view.js'

/** What pins are counted by: the lane alone, averaged over all scores, or the game as it stands. */
export type Counting = 'lane' | 'score'

/** A throw to be decided, as everyone on the lanes sees it. Nothing of the oil and nothing of what comes is in it. */
export interface Moment {
  readonly kind: 'first-ball' | 'spare' | 'practice'
  readonly lane: number
  /** Pins that stand, from the bowler's side as a right-hander's. */
  readonly standing: number
  readonly weights: FrameWeights
  /** What one would throw who changes nothing: the last line on this lane, else the line the panel starts from. */
  readonly stay: Decision
  /** Whether what a throw would teach counts: in practice and on the first two frames on a lane. */
  readonly isTeaching: boolean
  /** First balls that are still to come on this oil after this throw. */
  readonly throwsToCome: number
}

const TEACHING_FRAMES = 2
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
  return {
    kind: spot.phase === 'practice' ? 'practice' : newRack ? 'first-ball' : 'spare',
    lane: spot.lane,
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
    weights: counting === 'lane' ? averageWeights(setup) : scoreWeights(state, spot),
    stay: view.suggestion,
    isTeaching: newRack && (spot.phase === 'practice' || framesBefore(state, spot) < TEACHING_FRAMES),
    throwsToCome: throwsToCome(state, spot, alike),
  }
}

function scoreWeights(state: BlockState, spot: Spot): FrameWeights {
  if (spot.phase === 'practice') return averageWeights(state.setup)
  const { setup, balls } = state
  const weights = weightsOfNextBall(setup.scoring, balls[spot.game - 1] ?? [], oddsOf(setup.bowler).baseline)
  if (!weights) throw new RangeError('The game is over.')
  return weights
}

/** Frames of games bowled on this lane before the coming one. */
function framesBefore({ lanes }: BlockState, { game, frame }: Spot): number {
  return Math.floor(((game - 1) * FRAMES + frame - 1) / lanes.length)
}

function throwsToCome({ setup, lanes }: BlockState, spot: Spot, alike: readonly number[]): number {
  let count = 0
  for (let game = Math.max(1, spot.game); game <= setup.games; game++)
    for (let frame = game === spot.game ? spot.frame + 1 : 1; frame <= FRAMES; frame++)
      if (alike.includes((frame - 1) % lanes.length)) count++
  return count
}
