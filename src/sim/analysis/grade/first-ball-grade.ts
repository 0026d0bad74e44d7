import { keptWith } from '../../kept-with.js'
import type { Decision } from '../../world/block/types.js'
import { meanOf } from '../shots/direct-worth.js'
import { indistinguishableFrom } from '../shots/neighbours.js'
import { ballIndexOf, shotKey } from '../shots/shots.js'
import { type JudgedThrow, judgingOn, pairedDifference, worthOnEachLane } from '../shots/worth-matrix.js'
import { givenAway, tooCloseToCall } from '../value/too-close.js'
import { type FairSearch, ROUNDS } from './fair-search.js'
import type { FairBall, PracticeFairGrade, PricedFairGrade } from './grade-types.js'
import { aheadOf, lessonBetween, mostTeaching } from './lookahead.js'
import type { Moment } from './moment.js'
import { percentileAmongPlausible } from './plausible.js'
import type { Probing } from './probing.js'

/** Lanes and errors by which the best of what the bowler cannot tell from the choice is picked out. */
const NEIGHBOUR_LANES = 48
const NEIGHBOUR_DELIVERIES = 12
const NEIGHBOUR_START = 800_000

/**
 * Grades a first ball.
 * @param probing given while what a throw teaches counts, else null
 */
export function gradeFirstBall(
  search: FairSearch,
  moment: Pick<Moment, 'stay' | 'throwsToCome'>,
  decision: Decision,
  probing: Probing | null,
): PricedFairGrade {
  const { sweeps, finalists } = search
  const leader = probing ? aheadOf(probing, moment.throwsToCome) : finalists[0]
  const chosen = throwOf(search, decision)
  const judged = (thrown: JudgedThrow): Float64Array => judgedOn(search, thrown)
  const leaderWorths = judged(leader)
  const choiceWorths = judged(chosen)
  const now = pairedDifference(leaderWorths, choiceWorths)
  const later = probing
    ? lessonBetween({
        probing,
        best: leader,
        chosen,
        throwsToCome: moment.throwsToCome,
        lostByBestNowPins: meanOf(judged(finalists[0])) - meanOf(leaderWorths),
      })
    : { pins: 0, standardErrorPins: 0 }
  const lostPins = Math.max(0, now.mean + later.pins)
  // A choice that the race passed over, and that proves as good on lanes the race never saw, is the best one known.
  const best = lostPins > 0 ? leader : chosen
  const bestWorths = lostPins > 0 ? leaderWorths : choiceWorths
  const standardErrorPins = Math.sqrt(
    now.standardError * now.standardError + later.standardErrorPins * later.standardErrorPins,
  )
  const tooCloseToCallPins = tooCloseToCall(standardErrorPins)
  const gainNearby = (): number => Math.max(0, meanOf(judged(nearestBest(search, chosen))) - meanOf(choiceWorths))
  const indistinguishableLostPins = lostPins <= tooCloseToCallPins ? lostPins : Math.max(0, lostPins - gainNearby())
  const choiceWorth = meanOf(choiceWorths)
  const staying = throwOf(search, moment.stay)
  return {
    kind: 'first-ball',
    best: decisionOf(search, best),
    choiceWorth,
    bestWorth: probing ? meanOf(bestWorths) : choiceWorth + lostPins,
    lostPins,
    standardErrorPins,
    indistinguishableLostPins,
    tooCloseToCallPins,
    givenAwayPins: givenAway(lostPins, indistinguishableLostPins, tooCloseToCallPins),
    stakesPins: Math.max(0, meanOf(judged(finalists[0])) - meanOf(judged(staying))),
    percentile: percentileAmongPlausible(sweeps, lostPins),
    informationPins: search.informationPins(),
    teachingPins: probing ? probing.lessonOf(chosen).pins : null,
    perBall: bestOfEachBall(search),
  }
}

/** Grades a practice throw by what it would teach. */
export function gradePractice(search: FairSearch, decision: Decision, probing: Probing): PracticeFairGrade {
  const best = mostTeaching(probing)
  const teachingPins = probing.lessonOf(throwOf(search, decision)).pins
  return {
    kind: 'practice',
    best: decisionOf(search, best),
    teachingPins,
    bestTeachingPins: Math.max(best.lesson.pins, teachingPins),
    informationPins: search.informationPins(),
    perBall: bestOfEachBall(search),
    choiceWorth: null,
    bestWorth: null,
    lostPins: null,
    standardErrorPins: null,
    indistinguishableLostPins: null,
    tooCloseToCallPins: null,
    givenAwayPins: null,
    stakesPins: null,
    percentile: null,
  }
}

/** Worth of a throw on each of the judging lanes: the best throw and the habitual one come up again with every choice. */
const judgedOn = keptWith(shotKey, (search: FairSearch, thrown: JudgedThrow) =>
  worthOnEachLane(search.judging(), thrown),
)

/** The best of what the bowler cannot tell from a throw, on lanes and errors that grade nothing. */
function nearestBest(search: FairSearch, chosen: JudgedThrow): JudgedThrow {
  const lanes = search.imagine(NEIGHBOUR_LANES, ROUNDS.neighbours)
  const judging = judgingOn(search.bench, lanes, NEIGHBOUR_DELIVERIES, NEIGHBOUR_START)
  return indistinguishableFrom(chosen.aim)
    .map((aim) => ({ ...chosen, aim }))
    .map((thrown) => ({ thrown, worth: meanOf(worthOnEachLane(judging, thrown)) }))
    .reduce((most, one) => (one.worth > most.worth ? one : most)).thrown
}

function throwOf({ setup }: FairSearch, { ballId, aim, release }: Decision): JudgedThrow {
  return { ballIndex: ballIndexOf(setup.bag, ballId), aim, release }
}

function decisionOf({ setup }: FairSearch, { ballIndex, aim, release = 'strike' }: JudgedThrow): Decision {
  return { ballId: setup.bag[ballIndex].id, aim, release }
}

function bestOfEachBall(search: FairSearch): FairBall[] {
  const { setup, finalists } = search
  return finalists
    .filter((line, at) => finalists.findIndex((one) => one.ballIndex === line.ballIndex) === at)
    .map((line) => ({ ballId: setup.bag[line.ballIndex].id, decision: decisionOf(search, line), worth: line.worth }))
}
