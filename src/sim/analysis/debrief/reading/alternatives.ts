import type { BlockState, Decision } from '../../../world/block/types.js'
import { knownSearch, spotOf } from '../../oracle/known-choice.js'
import type { FirstBallJudge } from './first-ball-judge.js'

/** A choice that was not made, against the one that was: above 0 it was worth more. */
export interface Alternative {
  readonly what: 'best-line-of-ball' | 'move'
  readonly decision: Decision
  /** By what could be known. */
  readonly fairGainPins: number
  /** On the oil as it was. */
  readonly knownGainPins: number
}

/** Small moves one might have made instead: feet and target in boards, inwards above 0. */
const NEIGHBOUR_MOVES: readonly (readonly [feet: number, target: number])[] = [
  [2, 1],
  [-2, -1],
  [1, 0.5],
  [-1, -0.5],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
]

/**
 * The road not taken: each ball on its best line, and the neighbouring moves with the ball that was thrown, each in
 * expectation by what could be known and on the oil as it was. Nothing of them depends on what was thrown or fell.
 */
export function alternativesOf(before: BlockState, decision: Decision, judge: FirstBallJudge): Alternative[] {
  const { setup } = before
  const known = knownSearch(setup, before.lanes[spotOf(before).lane])
  const knownWorth = ({ ballId, aim }: Decision): number =>
    known.worthOf(
      setup.bag.findIndex((ball) => ball.id === ballId),
      aim,
    )
  const own = knownWorth(decision)
  const against = (what: Alternative['what'], other: Decision): Alternative => ({
    what,
    decision: other,
    fairGainPins: judge.gap(other, decision).pins,
    knownGainPins: knownWorth(other) - own,
  })
  const balls = setup.bag.flatMap((_, ballIndex) => {
    const line = judge.search.finalists.find((one) => one.ballIndex === ballIndex)
    return line ? [against('best-line-of-ball', judge.decisionOf(line))] : []
  })
  const moves = NEIGHBOUR_MOVES.map(([feet, target]) =>
    against('move', {
      ...decision,
      aim: {
        ...decision.aim,
        feetBoard: decision.aim.feetBoard + feet,
        targetBoard: decision.aim.targetBoard + target,
      },
    }),
  )
  return [...balls.sort((a, b) => b.fairGainPins - a.fairGainPins), ...moves]
}
