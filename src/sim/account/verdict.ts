import type { Belief } from '../belief/belief.js'
import type { BlockState, Decision } from '../block/types.js'
import { facesNewRack } from '../block/view.js'
import { decisionOf } from '../decision/known-choice.js'
import { searchSpare } from '../decision/spare-search.js'
import type { FirstBallJudge } from './first-ball-judge.js'
import type { Verdict } from './reading.js'
import { judgeSpares } from './spare-judge.js'

const LEAST_TOO_CLOSE_PINS = 0.1
const STANDARD_ERRORS = 1.64

/** Grades a choice for which no grade was kept. */
export function verdictOn(
  before: BlockState,
  decision: Decision,
  belief: Belief,
  openJudge: () => FirstBallJudge,
): Verdict {
  return facesNewRack(before) ? onFirstBall(decision, openJudge()) : onSpare(before, decision, belief)
}

function onFirstBall(decision: Decision, judge: FirstBallJudge): Verdict {
  const best = judge.decisionOf(judge.search.finalists[0])
  const { pins, standardErrorPins } = judge.gap(best, decision)
  return settled(best, pins, Math.max(LEAST_TOO_CLOSE_PINS, STANDARD_ERRORS * standardErrorPins))
}

function onSpare(before: BlockState, decision: Decision, belief: Belief): Verdict {
  const judge = judgeSpares(before, belief, belief.lanes[0])
  const shots = judge.situations.slice(0, 3).map((situation) => decisionOf(before.setup, searchSpare(situation)))
  const best = shots.reduce((most, shot) => (judge.meanWorth(shot) > judge.meanWorth(most) ? shot : most))
  return settled(best, judge.meanWorth(best) - judge.meanWorth(decision), LEAST_TOO_CLOSE_PINS)
}

function settled(best: Decision, lostPins: number, tooCloseToCallPins: number): Verdict {
  return { best, lostPins, tooCloseToCallPins, givenAwayPins: Math.max(0, lostPins - tooCloseToCallPins) }
}
