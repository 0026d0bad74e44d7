import type { Decision } from '../block/types.js'
import { meanOf } from '../decision/direct-worth.js'
import type { SpareShot } from '../decision/spare-choice.js'
import { type FairSpareSearch, judgeSpare, meanByTable } from './fair-spare.js'
import type { PricedFairGrade } from './grade-types.js'
import { judgedOnce } from './judged-once.js'
import { indistinguishableFrom } from './neighbours.js'
import { ballIndexOf, isSameShot } from './shots.js'
import { givenAway, tooCloseToCall } from './too-close.js'
import { pairedDifference } from './worth-matrix.js'

/** Worth of a shot, rack by rack. */
const judgedAt = judgedOnce(({ finalists, bestOnJudging, situations }: FairSpareSearch, shot: SpareShot) =>
  isSameShot(shot, finalists[0]) ? bestOnJudging : judgeSpare(situations, shot),
)

/**
 * Grades a throw at what a first ball left.
 * @param stay how one would shoot by habit
 */
export function gradeSpare(search: FairSpareSearch, decision: Decision, stay: Decision): PricedFairGrade {
  const { setup, situations, finalists, bestOnJudging } = search
  const best = finalists[0]
  const shotOf = ({ ballId, aim, release }: Decision): SpareShot => ({
    ballIndex: ballIndexOf(setup.bag, ballId),
    aim,
    release,
  })
  const judged = (shot: SpareShot): Float64Array => judgedAt(search, shot)
  const chosen = shotOf(decision)
  const choice = judged(chosen)
  const { mean, standardError } = pairedDifference(bestOnJudging, choice)
  const near = indistinguishableFrom(chosen.aim)
    .map((aim) => ({ ...chosen, aim }))
    .map((shot) => ({ shot, worth: meanByTable(situations, shot) }))
    .reduce((most, one) => (one.worth > most.worth ? one : most)).shot
  const lostPins = Math.max(0, mean)
  const indistinguishableLostPins = isSameShot(near, chosen)
    ? lostPins
    : Math.max(0, Math.min(lostPins, meanOf(bestOnJudging) - meanOf(judged(near))))
  const tooCloseToCallPins = tooCloseToCall(standardError)
  const choiceWorth = meanOf(choice)
  return {
    kind: 'spare',
    best: { ballId: setup.bag[best.ballIndex].id, aim: best.aim, release: best.release },
    choiceWorth,
    bestWorth: choiceWorth + lostPins,
    lostPins,
    standardErrorPins: standardError,
    indistinguishableLostPins,
    tooCloseToCallPins,
    givenAwayPins: givenAway(lostPins, indistinguishableLostPins, tooCloseToCallPins),
    stakesPins: Math.max(0, meanOf(bestOnJudging) - meanOf(judged(shotOf(stay)))),
    percentile: null,
    informationPins: 0,
    teachingPins: null,
    perBall: [],
  }
}
