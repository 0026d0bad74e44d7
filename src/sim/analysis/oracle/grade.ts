import type { BlockState, Decision } from '../../world/block/types.js'
import { meantThrow } from '../../world/bowler/release.js'
import { deliveryNodes } from '../shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../shots/direct-worth.js'
import { LIVE_SPARE_DELIVERIES, liveSpareWorth, type SpareShot } from '../shots/spare-choice.js'
import { searchSpare } from '../shots/spare-search.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import { facesNewRack } from '../view/player-view.js'
import { decisionOf, knownSearch, laneInPlay, spareSituationOf, spotOf } from './known-choice.js'

/** What a choice is held against here: the best with the oil in sight, which no player has. */
export const KNOWN_LABEL = 'against the oil as it was'

/** A choice priced in expected game pins against the best one with the oil in sight. */
export interface KnownGrade {
  readonly label: typeof KNOWN_LABEL
  readonly kind: 'first-ball' | 'spare'
  /** Expected game pins lost by the choice, never below 0. */
  readonly givenAwayPins: number
  /** One standard error of it. */
  readonly standardErrorPins: number
  /** Worth of choice and best, against the bowler's average first ball or against felling nothing. */
  readonly choiceWorth: number
  readonly bestWorth: number
  readonly best: Decision
  /** The best line of each ball, dearest first; empty for spares. */
  readonly perBall: readonly { readonly ballId: string; readonly worth: number; readonly decision: Decision }[]
}

/** Enough for a standard error of about a twentieth of a pin on paired lines. */
const GRADE_DELIVERIES = 2048
const gradeNodes = deliveryNodes(GRADE_DELIVERIES, 40_000)
const choiceWorths = new Float64Array(GRADE_DELIVERIES)
const bestWorths = new Float64Array(GRADE_DELIVERIES)

/** Prices a decision before it is thrown. Changes nothing and draws nothing of the block's. */
export function gradeKnown(state: BlockState, decision: Decision): KnownGrade {
  return facesNewRack(state) ? gradeFirstBall(state, decision) : gradeSpare(state, decision)
}

function gradeFirstBall(state: BlockState, decision: Decision): KnownGrade {
  const { setup } = state
  const lane = state.lanes[spotOf(state).lane]
  const search = knownSearch(setup, lane)
  const inPlay = laneInPlay(setup, lane)
  const bag = dynamicsOfBag(setup.bag)
  const pricing = pricingOf(setup)
  const best = decisionOf(setup, search.best)
  const deliver = (one: Decision, into: Float64Array): void =>
    deliverAll(
      inPlay,
      bag[setup.bag.findIndex((ball) => ball.id === one.ballId)],
      meantThrow(setup.bowler, one.aim, one.release),
      gradeNodes,
      firstBallWorth(pricing, one.aim.speedStep),
      into,
    )
  deliver(decision, choiceWorths)
  deliver(best, bestWorths)
  const perBall = search.perBall
    .map((line) => ({ ballId: setup.bag[line.ballIndex].id, worth: line.worth, decision: decisionOf(setup, line) }))
    .sort((a, b) => b.worth - a.worth)
  return { ...comparison(GRADE_DELIVERIES), label: KNOWN_LABEL, kind: 'first-ball', best, perBall }
}

function gradeSpare(state: BlockState, decision: Decision): KnownGrade {
  const situation = spareSituationOf(state)
  const found = searchSpare(situation)
  const chosen: SpareShot = {
    ballIndex: state.setup.bag.findIndex((ball) => ball.id === decision.ballId),
    aim: decision.aim,
    release: decision.release,
  }
  liveSpareWorth(situation, chosen, choiceWorths)
  liveSpareWorth(situation, found, bestWorths)
  return {
    ...comparison(LIVE_SPARE_DELIVERIES),
    label: KNOWN_LABEL,
    kind: 'spare',
    best: decisionOf(state.setup, found),
    perBall: [],
  }
}

function comparison(
  count: number,
): Pick<KnownGrade, 'givenAwayPins' | 'standardErrorPins' | 'choiceWorth' | 'bestWorth'> {
  const choiceWorth = meanOf(choiceWorths, count)
  const bestWorth = meanOf(bestWorths, count)
  const lost = bestWorth - choiceWorth
  let square = 0
  for (let k = 0; k < count; k++) {
    const off = bestWorths[k] - choiceWorths[k] - lost
    square += off * off
  }
  return {
    givenAwayPins: Math.max(0, lost),
    standardErrorPins: Math.sqrt(square / (count - 1) / count),
    choiceWorth,
    bestWorth: Math.max(bestWorth, choiceWorth),
  }
}
