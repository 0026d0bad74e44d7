import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision } from '../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../sim/world/pins/leaves.js'
import type { Scoring } from '../../sim/world/scoring/game.js'
import { scoreLines } from './score-lines.js'
import { lineWords } from './throw-words.js'
import { wrapped } from './wrapped.js'

export interface ThrowToTell {
  readonly decision: Decision
  /** 0 for practice. */
  readonly game: number
  readonly frame: number
  readonly standingBefore: number
  readonly standingAfter: number
}

export interface KeptToTell {
  readonly scoring: Scoring
  readonly bag: readonly BallSpecification[]
  readonly throws: readonly ThrowToTell[]
  readonly balls: readonly (readonly (readonly number[])[])[]
}

/** What is left of a block of an earlier model: why no more can be said, the score, and what was thrown. */
export function keptBlockLines({ scoring, bag, throws, balls }: KeptToTell): string[] {
  return [
    ...wrapped(
      'The model of lane, ball and pins has changed since this block was played, so its oil and its prices cannot be worked out again. What was thrown and what it left was kept:',
    ),
    ...balls.flatMap((game, at) => ['', `Game ${at + 1}`, ...scoreLines(scoring, game)]),
    '',
    ...throws.map(
      ({ decision, game, frame, standingBefore, standingAfter }) =>
        `${(game === 0 ? `practice ${frame}` : `${game}-${frame}`).padEnd(12)}${lineWords(decision, bag)}: ${leftWords(standingBefore, standingAfter)}`,
    ),
  ]
}

function leftWords(before: number, after: number): string {
  if (after === 0) return before === FULL_RACK ? 'strike' : 'spare'
  return `left ${leaveName(after)}`
}
