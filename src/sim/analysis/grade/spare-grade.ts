import { keptWith } from '../../kept-with.js'
import type { Decision } from '../../world/block/types.js'
import { meanOf } from '../shots/direct-worth.js'
import { indistinguishableFrom } from '../shots/neighbours.js'
import { ballIndexOf, shotKey } from '../shots/shots.js'
import type { SpareShot } from '../shots/spare-choice.js'
import { pairedDifference } from '../shots/worth-matrix.js'
import { givenAway, tooCloseToCall } from '../value/too-close.js'
import { type FairSpareSearch, judgeSpare, meanByTable } from './fair-spare.js'
import type { PricedFairGrade } from './grade-types.js'

/** Worth of a shot, rack by rack. */
const judgedAt = keptWith(shotKey, ({ situations }: FairSpareSearch, shot: SpareShot) => judgeSpare(situations, shot))

/**
 * Grades a throw at what a first ball left.
 * @param stay how one would shoot by habit
 */
export function gradeSpare(search: FairSpareSearch, decision: Decision, stay: Decision): PricedFairGrade {
  const { setup, finalists } = search
  const best = finalists[0]
  const shotOf = ({ ballId, aim, release }: Decision): SpareShot => ({
    ballIndex: ballIndexOf(setup.bag, ballId),
    aim,
    release,
  })
  const judged = (shot: SpareShot): Float64Array => judgedAt(search, shot)
  const chosen = shotOf(decision)
  const choice = judged(chosen)
  const { mean, standardError } = pairedDifference(judged(best), choice)
  const lostPins = Math.max(0, mean)
  const tooCloseToCallPins = tooCloseToCall(standardError)
  const indistinguishableLostPins =
    lostPins <= tooCloseToCallPins ? lostPins : Math.max(0, lostPins - gainNearby(search, chosen))
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
    stakesPins: Math.max(0, meanOf(judged(best)) - meanOf(judged(shotOf(stay)))),
    percentile: null,
    informationPins: 0,
    teachingPins: null,
    perBall: [],
  }
}

/**
 * How much more the best is worth that the bowler cannot tell from a shot, by the table: so near to each other, two shots
 * differ by less than the racks they would be thrown at.
 */
function gainNearby({ situations }: FairSpareSearch, shot: SpareShot): number {
  const own = meanByTable(situations, shot)
  return indistinguishableFrom(shot.aim).reduce(
    (most, aim) => Math.max(most, meanByTable(situations, { ...shot, aim }) - own),
    0,
  )
}
