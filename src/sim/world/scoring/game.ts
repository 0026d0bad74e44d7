import { scoreCurrentFrame } from './current-frame.js'
import { type Ball, FRAMES, type FrameReading, PINS, readFrame, type Scoring } from './frame.js'
import { scoreTenPin } from './ten-pin.js'

export type { Ball, BallCount, Scoring } from './frame.js'

/** The balls of a game, frame by frame; frames not yet bowled may be missing or empty. */
export type GameBalls = readonly (readonly Ball[])[]

export interface FrameLine {
  /** Pins that count, ball by ball. */
  readonly balls: readonly number[]
  /** X strike, / spare, - nothing felled, F foul, else the digit. */
  readonly symbols: readonly string[]
  /** Null while a ball this frame depends on is still to come. */
  readonly frameScore: number | null
  /** Running score; null while this frame's or an earlier one's score is open. */
  readonly cumulative: number | null
  readonly complete: boolean
}

export interface GameLine {
  /** Always ten. */
  readonly frames: readonly FrameLine[]
  /** What is certain already: the score if no other pin fell. The final score once the game is complete. */
  readonly total: number
  readonly complete: boolean
  /** The score if every ball from here on cleared its rack. */
  readonly maximumPossible: number
}

/** The ball to be thrown next. */
export interface NextBall {
  /** 1 to 10 */
  readonly frame: number
  /** 1 to 3 */
  readonly ball: number
  /** Whether it faces all ten pins: newly set, respotted after a foul, or left untouched by the ball before. */
  readonly standingReset: boolean
  /** Whether it is the first ball on its rack, so that felling all ten is a strike and not a spare. */
  readonly newRack: boolean
  /** How many pins it faces. */
  readonly standing: number
}

function readGame(scoring: Scoring, balls: GameBalls): FrameReading[] {
  if (balls.length > FRAMES) throw new RangeError(`A game has ${FRAMES} frames, but ${balls.length} were given.`)
  const frames = Array.from({ length: FRAMES }, (_, index) => readFrame(scoring, index + 1, balls[index] ?? []))
  const current = frames.findIndex((frame) => !frame.complete)
  const beyond = frames.findLastIndex((frame) => frame.counted.length > 0)
  if (current >= 0 && beyond > current)
    throw new RangeError(`Frame ${beyond + 1} has balls, but frame ${current + 1} is not finished.`)
  return frames
}

function nextInFrames(frames: readonly FrameReading[]): NextBall | null {
  const index = frames.findIndex((frame) => !frame.complete)
  if (index < 0) return null
  const { counted, newRack, standing } = frames[index]
  return { frame: index + 1, ball: counted.length + 1, standingReset: standing === PINS, newRack, standing }
}

const scoreFrames = (scoring: Scoring, frames: readonly FrameReading[]) =>
  scoring === 'ten-pin' ? scoreTenPin(frames) : scoreCurrentFrame(frames)

const certainTotal = (scoring: Scoring, frames: readonly FrameReading[]): number =>
  scoreFrames(scoring, frames).reduce((sum, frame) => sum + frame.certain, 0)

function bestPossible(scoring: Scoring, balls: GameBalls): number {
  const filled: Ball[][] = Array.from({ length: FRAMES }, (_, index) => [...(balls[index] ?? [])])
  for (let next = nextBall(scoring, filled); next !== null; next = nextBall(scoring, filled))
    filled[next.frame - 1].push(next.standing)
  return certainTotal(scoring, readGame(scoring, filled))
}

/**
 * The score line of a game, finished or not.
 *
 * @param balls pins felled (or `BallCount`s, where a foul is possible) per ball, grouped by frame
 * @throws RangeError naming frame and ball when the balls break the rules of play
 */
export function tally(scoring: Scoring, balls: GameBalls): GameLine {
  const readings = readGame(scoring, balls)
  const scores = scoreFrames(scoring, readings)
  let running: number | null = 0
  const frames = readings.map((reading, index): FrameLine => {
    const frameScore = scores[index].score
    running = running === null || frameScore === null ? null : running + frameScore
    return {
      balls: reading.counted,
      symbols: reading.symbols,
      frameScore,
      cumulative: running,
      complete: reading.complete,
    }
  })
  return {
    frames,
    total: certainTotal(scoring, readings),
    complete: readings.every((reading) => reading.complete),
    maximumPossible: bestPossible(scoring, balls),
  }
}

/** The next ball of a game, or null when the game is over. Throws RangeError as `tally` does. */
export function nextBall(scoring: Scoring, balls: GameBalls): NextBall | null {
  return nextInFrames(readGame(scoring, balls))
}

/**
 * How many balls a frame may still take, were each to fell as little as possible; 0 when it is over.
 *
 * @param frame 1 to 10
 */
export function ballsAllowed(scoring: Scoring, frame: number, balls: readonly Ball[]): number {
  const sofar = [...balls]
  let allowed = 0
  for (; !readFrame(scoring, frame, sofar).complete; allowed += 1) sofar.push(0)
  return allowed
}
