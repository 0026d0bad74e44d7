import { boardToMetres } from '../../../units.js'
import type { BlockSetup } from '../../../world/block/types.js'
import { lateralSpreadAt } from '../../../world/bowler/profile.js'
import { meantThrow } from '../../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../../world/lane/geometry.js'
import { countPins } from '../../../world/pins/leaves.js'
import { spareCurveAt, spareOdds } from '../../carry/spare-odds.js'
import { deliveryNodes } from '../../shots/delivery-nodes.js'
import { deliverAll, meanOf } from '../../shots/direct-worth.js'
import { pricingOf } from '../../value/bowler-pricing.js'
import { lookUpWorth } from '../../value/value-table.js'
import { weighSecondBall } from '../../value/worth.js'
import type { BentWorth } from './model-doubt.js'

const DELIVERIES = 48
const nodes = deliveryNodes(DELIVERIES, 7_000)
const worths = new Float64Array(DELIVERIES)
const POCKET_METRES = boardToMetres(17.5)
const HEADPIN_METRES = boardToMetres(20)

/** First balls, by the carry table drawn out about the pocket. */
export function bentFirstBallWorth(setup: BlockSetup): BentWorth {
  const pricing = pricingOf(setup)
  return (film, balls, choice, carryWidth) => {
    const ball = balls[setup.bag.findIndex((one) => one.id === choice.ballId)]
    const table = pricing.tables[choice.aim.speedStep + 1]
    deliverAll(
      film,
      ball,
      meantThrow(setup.bowler, choice.aim, choice.release),
      nodes,
      (rolled) =>
        rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES
          ? pricing.gutterWorth
          : lookUpWorth(
              table,
              POCKET_METRES + (rolled.lateralAtPinsMetres - POCKET_METRES) / carryWidth,
              rolled.tangentAtPins,
              0,
            ),
      worths,
    )
    return meanOf(worths)
  }
}

/** Throws at a spare, by the table of straight balls drawn out about the best place to hit. @param standing from the bowler's side as a right-hander's */
export function bentSpareWorth(setup: BlockSetup, standing: number): BentWorth {
  const { weights } = pricingOf(setup)
  const felled = 10 - countPins(standing)
  const middle = spareOdds(standing, lateralSpreadAt(setup.bowler.spareError, HEADPIN_DISTANCE_METRES)).bestOffsetMetres
  return (film, balls, choice, carryWidth) => {
    const ball = balls[setup.bag.findIndex((one) => one.id === choice.ballId)]
    deliverAll(
      film,
      ball,
      meantThrow(setup.bowler, choice.aim, choice.release),
      nodes,
      (rolled) => {
        if (rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES) return 0
        const offset = HEADPIN_METRES - rolled.lateralAtPinsMetres
        const { conversion, meanPins } = spareCurveAt(standing, middle + (offset - middle) / carryWidth)
        return weighSecondBall(weights, felled, conversion, meanPins)
      },
      worths,
    )
    return meanOf(worths)
  }
}
