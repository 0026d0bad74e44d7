import { arcTangent } from '../../../exact-math.js'
import { stream } from '../../../random.js'
import { samplesFrom } from '../../../sample-ranges.js'
import type { BlockState, Decision, ThrowRecord } from '../../../world/block/types.js'
import { meantThrow } from '../../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES, HEADPIN_LATERAL_METRES } from '../../../world/lane/geometry.js'
import { countPins, mirrorMask } from '../../../world/pins/leaves.js'
import { drawRackNature, type RackNature } from '../../../world/pins/nature.js'
import { throwAtRack } from '../../../world/pins/rack.js'
import { blockPricing } from '../../grade/lane-baseline.js'
import { laneInPlay, spareSituationOf, spotOf } from '../../oracle/known-choice.js'
import { fullInformationBest } from '../../oracle/oracle.js'
import { deliveryNodes } from '../../shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../../shots/direct-worth.js'
import { type SpareSample, spareWorths } from '../../shots/spare-worth.js'
import { pairedDifference } from '../../shots/worth-matrix.js'
import { dynamicsOfBag } from '../../value/bowler-pricing.js'
import { weighSecondBall } from '../../value/worth.js'
import { facesNewRack } from '../../view/player-view.js'
import type { ThrowWorths } from './ledger.js'

const TRUE_DELIVERIES = 1024
/** Deliveries that no search and no grade has looked at. */
const trueNodes = deliveryNodes(TRUE_DELIVERIES, samplesFrom('ledger', TRUE_DELIVERIES))
const oneWorth = new Float64Array(1)

const RACKS_PER_DELIVERED_SPARE = 96
const racks: readonly RackNature[] = Array.from({ length: RACKS_PER_DELIVERED_SPARE }, (_, index) =>
  drawRackNature(stream({ seed: 'account-racks', game: 0, frame: 0, ball: 0, purpose: 'solver', index })),
)

/** What choices at a spare are priced by on the oil as it was. */
const TRUE_SPARE_DELIVERIES = 1024
const spareSample: SpareSample = {
  nodes: deliveryNodes(TRUE_SPARE_DELIVERIES, samplesFrom('ledgerSpares', TRUE_SPARE_DELIVERIES)),
  deliveriesPerLane: TRUE_SPARE_DELIVERIES,
  natures: racks,
}

/**
 * Prices one throw five ways. Choices are rolled directly on the oil as it was, all with the same misses, so that their
 * differences are steadier than themselves; the best known one is the best of the three by that same measure.
 *
 * The delivered ball is priced by the evaluator that priced the choice: the carry table for a first ball, live racks at
 * other racks than the block's for a spare. Delivery luck then has mean 0 by construction, and a ball's price depends on
 * how it came in and on nothing the pins did. Carry luck has mean 0 as far as the table is true to the live rack; the
 * mean over the throw's own dozen racks would make it 0 exactly, but would book those racks' mood as the bowler's delivery.
 */
export function throwWorths(
  prices: TrueOilPrices,
  record: ThrowRecord,
  bestFair: Decision,
  bestKnown: Decision,
): ThrowWorths {
  const choice = prices.ofChoice(record.decision)
  const fair = prices.ofChoice(bestFair)
  return {
    bestKnown: Math.max(prices.ofChoice(bestKnown), fair, choice),
    bestFair: fair,
    choice,
    delivered: prices.ofDelivered(record),
    result: prices.ofResult(record),
  }
}

/** Pins a coming choice loses against the best if the oil is seen; never below 0. */
export function lostOnTrueOil(state: BlockState, decision: Decision): number {
  const { ofChoice } = trueOilPrices(state)
  return Math.max(0, ofChoice(fullInformationBest(state)) - ofChoice(decision))
}

export function isSame(a: Decision, b: Decision): boolean {
  return (
    a.ballId === b.ballId &&
    a.release === b.release &&
    a.aim.feetBoard === b.aim.feetBoard &&
    a.aim.targetBoard === b.aim.targetBoard &&
    a.aim.speedStep === b.aim.speedStep
  )
}

/** What can be said of a coming throw's worth on the oil as it lies, in expected game pins; each choice is rolled once. */
export interface TrueOilPrices {
  /** Over the bowler's misses. */
  readonly ofChoice: (decision: Decision) => number
  /** One standard error of how much more one choice is worth than another. */
  readonly errorBetween: (a: Decision, b: Decision) => number
  readonly ofDelivered: (record: ThrowRecord) => number
  readonly ofResult: (record: ThrowRecord) => number
}

/** Opens the prices of a throw. @param before the block as it stood then */
export function trueOilPrices(before: BlockState): TrueOilPrices {
  const { onEach, ofDelivered, ofResult } = facesNewRack(before) ? firstBallPrices(before) : sparePrices(before)
  const kept = new Map<string, Float64Array>()
  const rolled = (decision: Decision): Float64Array => {
    const { ballId, aim, release } = decision
    const key = [ballId, aim.feetBoard, aim.targetBoard, aim.speedStep, release].join(' ')
    const known = kept.get(key) ?? onEach(decision)
    kept.set(key, known)
    return known
  }
  return {
    ofChoice: (decision) => meanOf(rolled(decision)),
    errorBetween: (a, b) => pairedDifference(rolled(a), rolled(b)).standardError,
    ofDelivered,
    ofResult,
  }
}

interface Prices {
  readonly onEach: (decision: Decision) => Float64Array
  readonly ofDelivered: (record: ThrowRecord) => number
  readonly ofResult: (record: ThrowRecord) => number
}

function firstBallPrices(before: BlockState): Prices {
  const { setup } = before
  const inPlay = laneInPlay(setup, before.lanes[spotOf(before).lane])
  const bag = dynamicsOfBag(setup.bag)
  const pricing = blockPricing(before)
  const worthOf = firstBallWorth(pricing)
  const deliver = (one: Decision, nodes: Float64Array, into: Float64Array): Float64Array => {
    const ball = bag[setup.bag.findIndex((each) => each.id === one.ballId)]
    deliverAll(inPlay, ball, meantThrow(setup.bowler, one.aim, one.release), nodes, worthOf, into)
    return into
  }
  return {
    onEach: (one) => deliver(one, trueNodes, new Float64Array(TRUE_DELIVERIES)),
    ofDelivered: ({ decision, truth }) => deliver(decision, Float64Array.from(truth.normals), oneWorth)[0],
    ofResult: ({ standingAfter }) => pricing.worthOfLeave(ownSide(before, standingAfter)),
  }
}

function sparePrices(before: BlockState): Prices {
  const situation = spareSituationOf(before, blockPricing(before))
  const { bag, standing, profile, inPlay, pricing } = situation
  const indexOf = (one: Decision): number => before.setup.bag.findIndex((each) => each.id === one.ballId)
  const stood = countPins(standing)
  const worthOfAfter = (after: number): number =>
    weighSecondBall(pricing.weights, 10 - stood, after === 0 ? 1 : 0, stood - countPins(after))
  return {
    onEach: (one) =>
      spareWorths([situation], { ballIndex: indexOf(one), aim: one.aim, release: one.release }, spareSample),
    ofDelivered: ({ decision, truth }) => {
      const ball = bag[indexOf(decision)]
      deliverAll(
        inPlay,
        ball,
        meantThrow(profile, decision.aim, decision.release),
        Float64Array.from(truth.normals),
        (rolled) => {
          if (rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES) return worthOfAfter(standing)
          const ballThrow = {
            offsetMetres: HEADPIN_LATERAL_METRES - rolled.lateralAtPinsMetres,
            angleRadians: arcTangent(rolled.tangentAtPins),
            speedMetresPerSecond: rolled.speedAtPinsMetresPerSecond,
            ballMassKilograms: ball.massKilograms,
            standing,
          }
          return (
            racks.reduce((sum, nature) => sum + worthOfAfter(throwAtRack(ballThrow, nature).standing), 0) / racks.length
          )
        },
        oneWorth,
      )
      return oneWorth[0]
    },
    ofResult: ({ standingAfter }) => worthOfAfter(ownSide(before, standingAfter)),
  }
}

/** A mask as it looks from the bowler's own side, everything inside being a right-hander's. */
function ownSide({ setup }: BlockState, mask: number): number {
  return setup.bowler.hand === 'left' ? mirrorMask(mask) : mask
}
