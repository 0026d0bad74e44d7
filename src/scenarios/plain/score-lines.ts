import { type GameBalls, type Scoring, tally } from '../../sim/scoring/game.js'

const FRAME_WIDTH = 6

/** A game's score sheet on three lines: frame numbers, the balls, the running score where it is settled. */
export function scoreLines(scoring: Scoring, balls: GameBalls): string[] {
  const { frames, total, maximumPossible, complete } = tally(scoring, balls)
  const cell = (text: string): string => text.padStart(FRAME_WIDTH)
  return [
    `frame${frames.map((_, index) => cell(String(index + 1))).join('')}`,
    `balls${frames.map((frame) => cell(frame.symbols.join(' '))).join('')}`,
    `score${frames.map((frame) => cell(frame.cumulative === null ? '' : String(frame.cumulative))).join('')}`,
    complete ? `Total ${total}.` : `So far ${total}, at most ${maximumPossible}.`,
  ]
}
