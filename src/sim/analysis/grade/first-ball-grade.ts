import type { Decision } from '../../world/block/types.js'
import { ballIndexOf } from '../shots/shots.js'
import type { JudgedThrow } from '../shots/worth-matrix.js'
import { type ExpectedReaction, expectedReaction } from './contact-chances.js'
import type { FairSearch } from './fair-search.js'
import type { FirstBallPrices, PricedMoment } from './first-ball-prices.js'
import type { FairBall, PracticeFairGrade, PricedFairGrade } from './grade-types.js'
import { mostTeaching } from './lookahead.js'
import { percentileAmongPlausible } from './plausible.js'
import type { Probing } from './probing.js'

/** Grades a first ball by the prices of its moment. */
export function gradeFirstBall(
  { search, last, probing }: PricedMoment,
  prices: FirstBallPrices,
  decision: Decision,
  lane: number,
): PricedFairGrade {
  const { sweeps, finalists } = search
  const chosen = throwOf(search, decision)
  const { chargedPins, lessonPins, ...loss } = prices.priceOf(chosen)
  const choiceWorth = prices.worthOf(chosen)
  const best = chargedPins > 0 ? decisionOf(search, prices.shownBest()) : decision
  return {
    kind: 'first-ball',
    best,
    choiceWorth,
    bestWorth: choiceWorth + loss.lostPins,
    ...loss,
    givenAwayPins: chargedPins,
    stakesPins: Math.max(0, prices.worthOf(finalists[0]) - prices.worthOf(last)),
    percentile: percentileAmongPlausible(sweeps, loss.lostPins),
    reason: {
      choice: reactionOf(search, lane, decision),
      best: chargedPins > 0 ? reactionOf(search, lane, best) : null,
      lessonPins: Math.min(chargedPins, Math.max(0, lessonPins)),
    },
    informationPins: search.information().pins,
    teachingPins: probing ? probing.lessonOf(chosen).pins : null,
    perBall: bestOfEachBall(search),
  }
}

/** Deliveries that are enough to say how many times in ten. */
const TOLD_DELIVERIES = 400

const reactionOf = ({ setup, belief }: FairSearch, lane: number, decision: Decision): ExpectedReaction =>
  expectedReaction(setup, belief, lane, decision, TOLD_DELIVERIES)

/** Grades a practice throw by what it would teach. */
export function gradePractice(search: FairSearch, decision: Decision, probing: Probing): PracticeFairGrade {
  const best = mostTeaching(probing)
  const teachingPins = probing.lessonOf(throwOf(search, decision)).pins
  return {
    kind: 'practice',
    best: decisionOf(search, best),
    teachingPins,
    bestTeachingPins: Math.max(best.lesson.pins, teachingPins),
    informationPins: search.information().pins,
    perBall: bestOfEachBall(search),
    choiceWorth: null,
    bestWorth: null,
    lostPins: null,
    standardErrorPins: null,
    tooCloseToCallPins: null,
    givenAwayPins: null,
    stakesPins: null,
    percentile: null,
  }
}

/** A decision as the search counts balls. @throws RangeError when the ball is not in the bag */
export function throwOf({ setup }: FairSearch, { ballId, aim, release }: Decision): JudgedThrow {
  return { ballIndex: ballIndexOf(setup.bag, ballId), aim, release }
}

/** The same back. */
export function decisionOf({ setup }: FairSearch, { ballIndex, aim, release = 'strike' }: JudgedThrow): Decision {
  return { ballId: setup.bag[ballIndex].id, aim, release }
}

function bestOfEachBall(search: FairSearch): FairBall[] {
  const { setup, finalists } = search
  return finalists
    .filter((line, at) => finalists.findIndex((one) => one.ballIndex === line.ballIndex) === at)
    .map((line) => ({ ballId: setup.bag[line.ballIndex].id, decision: decisionOf(search, line), worth: line.worth }))
}
