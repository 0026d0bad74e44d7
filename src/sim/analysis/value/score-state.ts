import { type Ball, FRAMES, readFrame, type Scoring } from '../../world/scoring/frame.js'
import { type GameBalls, nextBall } from '../../world/scoring/game.js'
import { type FrameOdds, type FrameWeights, frameWeights, NO_BONUS, type PendingBonus } from './worth.js'

/** Bonuses waiting at the start of a frame of this game, given the frames before it; none in current-frame scoring. */
export function waitingBonus(scoring: Scoring, framesBefore: readonly (readonly Ball[])[]): PendingBonus {
  if (scoring === 'current-frame') return NO_BONUS
  const result = (back: number) => {
    const index = framesBefore.length - back
    return index < 0 ? null : readFrame(scoring, index + 1, framesBefore[index]).result
  }
  const last = result(1)
  if (last === 'spare') return { b1: 1, b2: 0 }
  if (last !== 'strike') return NO_BONUS
  return result(2) === 'strike' ? { b1: 2, b2: 1 } : { b1: 1, b2: 1 }
}

/** The tenth frame's third ball at a fresh rack: its pins and nothing else. */
const LAST_BALL: FrameWeights = {
  perFirstBallPin: 1,
  perSecondBallPin: 0,
  strike: 0,
  spare: 0,
  perFirstBallPinOfSpare: 0,
}

/**
 * Weights for the rack the next ball faces, as the game stands: bonuses really waiting, and in the tenth frame of
 * ten-pin scoring the fill balls as what they are, a rack that earns nothing more. Null when the game is over.
 *
 * @param baseline odds of the frames and fill balls still to come
 */
export function weightsOfNextBall(scoring: Scoring, balls: GameBalls, baseline: FrameOdds): FrameWeights | null {
  const next = nextBall(scoring, balls)
  if (next === null) return null
  const bonus = waitingBonus(scoring, balls.slice(0, next.frame - 1))
  const sofar = balls[next.frame - 1] ?? []
  const marked = next.frame === FRAMES && scoring === 'ten-pin' ? readFrame(scoring, FRAMES, sofar).result : null
  if (marked === null) return frameWeights(scoring, bonus, baseline)
  if (next.ball === 3 && next.newRack) return LAST_BALL
  return {
    perFirstBallPin: 1 + bonus.b2,
    perSecondBallPin: 1,
    strike: baseline.firstBallPins,
    spare: 0,
    perFirstBallPinOfSpare: 0,
  }
}
