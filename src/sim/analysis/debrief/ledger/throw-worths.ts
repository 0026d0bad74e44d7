import { arcTangent } from '../../../exact-math.js'
import { stream } from '../../../random.js'
import { boardToMetres } from '../../../units.js'
import type { BlockState, Decision, ThrowRecord } from '../../../world/block/types.js'
import { meantThrow } from '../../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../../world/lane/geometry.js'
import { countPins, mirrorMask } from '../../../world/pins/leaves.js'
import { drawRackNature, type RackNature } from '../../../world/pins/nature.js'
import { throwAtRack } from '../../../world/pins/rack.js'
import { laneInPlay, spareSituationOf } from '../../oracle/known-choice.js'
import { deliveryNodes } from '../../shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../../shots/direct-worth.js'
import { LIVE_SPARE_DELIVERIES, liveSpareWorth } from '../../shots/spare-choice.js'
import { dynamicsOfBag, pricingOf } from '../../value/bowler-pricing.js'
import { weighSecondBall } from '../../value/worth.js'
import { facesNewRack } from '../../view/player-view.js'
import type { ThrowWorths } from './ledger.js'

const TRUE_DELIVERIES = 2048
/** Deliveries that no search and no grade has looked at. */
const trueNodes = deliveryNodes(TRUE_DELIVERIES, 90_000)
const worths = new Float64Array(TRUE_DELIVERIES)
const oneWorth = new Float64Array(1)
const spareWorths = new Float64Array(LIVE_SPARE_DELIVERIES)

const HEADPIN_LATERAL_METRES = boardToMetres(20)
const RACKS_PER_DELIVERED_SPARE = 96
const racks: readonly RackNature[] = Array.from({ length: RACKS_PER_DELIVERED_SPARE }, (_, index) =>
  drawRackNature(stream({ seed: 'account-racks', game: 0, frame: 0, ball: 0, purpose: 'solver', index })),
)

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
  before: BlockState,
  record: ThrowRecord,
  bestFair: Decision,
  bestKnown: Decision,
): ThrowWorths {
  const price = facesNewRack(before) ? firstBallPrices(before, record) : sparePrices(before, record)
  const choice = price.ofChoice(record.decision)
  const fair = isSame(bestFair, record.decision) ? choice : price.ofChoice(bestFair)
  const known = isSame(bestKnown, bestFair) ? fair : price.ofChoice(bestKnown)
  return {
    bestKnown: Math.max(known, fair, choice),
    bestFair: fair,
    choice,
    delivered: price.ofDelivered(),
    result: price.ofResult(),
  }
}

/** Expected worth of any choice for a throw, over the bowler's misses, on the oil as it was. */
export function worthOnTrueOil(before: BlockState, record: ThrowRecord): (decision: Decision) => number {
  return (facesNewRack(before) ? firstBallPrices(before, record) : sparePrices(before, record)).ofChoice
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

interface Prices {
  readonly ofChoice: (decision: Decision) => number
  readonly ofDelivered: () => number
  readonly ofResult: () => number
}

function firstBallPrices(before: BlockState, { spot, decision, standingAfter, truth }: ThrowRecord): Prices {
  const { setup } = before
  const inPlay = laneInPlay(setup, before.lanes[spot.lane])
  const bag = dynamicsOfBag(setup.bag)
  const pricing = pricingOf(setup)
  const deliver = (one: Decision, nodes: Float64Array, into: Float64Array): number => {
    const ball = bag[setup.bag.findIndex((each) => each.id === one.ballId)]
    const worthOf = firstBallWorth(pricing, one.aim.speedStep)
    deliverAll(inPlay, ball, meantThrow(setup.bowler, one.aim, one.release), nodes, worthOf, into)
    return meanOf(into)
  }
  return {
    ofChoice: (one) => deliver(one, trueNodes, worths),
    ofDelivered: () => deliver(decision, Float64Array.from(truth.normals), oneWorth),
    ofResult: () => pricing.worthOfLeave(ownSide(before, standingAfter)),
  }
}

function sparePrices(before: BlockState, { decision, standingAfter, truth }: ThrowRecord): Prices {
  const situation = spareSituationOf(before)
  const { bag, standing, profile, inPlay, pricing } = situation
  const indexOf = (one: Decision): number => before.setup.bag.findIndex((each) => each.id === one.ballId)
  const stood = countPins(standing)
  const worthOfAfter = (after: number): number =>
    weighSecondBall(pricing.weights, 10 - stood, after === 0 ? 1 : 0, stood - countPins(after))
  const ball = bag[indexOf(decision)]
  return {
    ofChoice: ({ aim, release, ...one }) =>
      liveSpareWorth(situation, { ballIndex: indexOf({ ...one, aim, release }), aim, release }, spareWorths),
    ofDelivered: () => {
      const normals = Float64Array.from(truth.normals)
      deliverAll(
        inPlay,
        ball,
        meantThrow(profile, decision.aim, decision.release),
        normals,
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
    ofResult: () => worthOfAfter(ownSide(before, standingAfter)),
  }
}

/** A mask as it looks from the bowler's own side, everything inside being a right-hander's. */
function ownSide({ setup }: BlockState, mask: number): number {
  return setup.bowler.hand === 'left' ? mirrorMask(mask) : mask
}
