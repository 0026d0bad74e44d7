import type { BlockState } from '../../../sim/world/block/types.js'
import { tally } from '../../../sim/world/scoring/game.js'

/** A line of the board on the wall: nothing of a choice, of a leave or of what is to come. */
interface BoardLine {
  readonly player: string
  readonly games: readonly number[]
  readonly frames: number
  readonly of: number
  readonly over: boolean
}

export interface Board {
  readonly title: string
  readonly lane: string
  readonly deadline: string
  readonly lines: readonly BoardLine[]
}

const FRAMES = 10

/** How far somebody is. */
export function boardLine(player: string, { balls, setup, spot }: BlockState): BoardLine {
  const lines = balls.map((game) => tally(setup.scoring, game))
  return {
    player,
    // Only what is settled: a running frame tells of a leave.
    games: lines.map(({ frames }) => frames.findLast(({ cumulative }) => cumulative !== null)?.cumulative ?? 0),
    frames: lines.reduce((sum, { frames }) => sum + frames.filter(({ complete }) => complete).length, 0),
    of: setup.games * FRAMES,
    over: spot === null,
  }
}

const sumOf = ({ games }: BoardLine): number => games.reduce((sum, game) => sum + game, 0)
/** More pins first, then more frames. */
export const byFigure = (one: BoardLine, other: BoardLine): number =>
  sumOf(other) - sumOf(one) || other.frames - one.frames || (one.player < other.player ? -1 : 1)
