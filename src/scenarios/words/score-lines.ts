import { type GameBalls, type Scoring, tally } from '../../sim/world/scoring/game.js'

const FRAME_WIDTH = 6

/** A game's score sheet on three lines: frame numbers, the balls, the running score where it is settled. */
export function scoreLines(scoring: Scoring, balls: GameBalls): string[] {
  const { frames, total, maximumPossible, complete } = tally(scoring, balls)
  const row = (title: string, cells: readonly string[]): string =>
    `${title}${cells.map((cell) => cell.padStart(FRAME_WIDTH)).join('')}`.trimEnd()
  return [
    row(
      'frame',
      frames.map((_, index) => String(index + 1)),
    ),
    row(
      'balls',
      frames.map((frame) => frame.symbols.join(' ')),
    ),
    row(
      'score',
      frames.map((frame) => String(frame.cumulative ?? '')),
    ),
    complete ? `Total ${total}.` : `So far ${total}, at most ${maximumPossible}.`,
  ]
}
