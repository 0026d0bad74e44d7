import type { BlockState, Decision } from '../block/types.js'
import type { PricedLine } from '../decision/best-line.js'
import { dynamicsOfBag, pricingOf } from '../decision/bowler-pricing.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../decision/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../decision/direct-worth.js'
import { bestKnownChoice, decisionOf, knownSearch, laneInPlay, spotOf } from '../decision/known-choice.js'
import { quadratureWorth } from '../decision/line-quadrature.js'
import { facesNewRack } from '../decision/player-view.js'
import { neighboursOf } from './neighbours.js'
import { distinctShots } from './shots.js'

/** Balls whose best line trails further by the quick search are not looked at again. */
const WITHIN_PINS = 0.8
/** Lines that are rolled, and of them those that are rolled once more, with misses of their own. */
const ROLLED_LINES = 8
const ROLLED_MISSES = deliveryNodes(2048, 700_000)
const LAST_LINES = 3
const LAST_MISSES = deliveryNodes(6144, 710_000)

/**
 * What one who sees the oil throws: the quick search can be a fifth of a pin off, so the lines around the best of each
 * ball are looked at once more, and the leading few rolled miss by miss.
 * @throws RangeError when the block is over
 */
export function knownPlay(state: BlockState): Decision {
  if (!facesNewRack(state)) return bestKnownChoice(state)
  const { setup } = state
  const lane = state.lanes[spotOf(state).lane]
  const inPlay = laneInPlay(setup, lane)
  const bag = dynamicsOfBag(setup.bag)
  const pricing = pricingOf(setup)
  const { best, perBall } = knownSearch(setup, lane)
  const around = perBall
    .filter((line) => line.worth > best.worth - WITHIN_PINS)
    .flatMap((line) => neighboursOf(line.aim).map((aim) => ({ ...line, aim })))
  const byWorth = (a: PricedLine, b: PricedLine): number => b.worth - a.worth
  const leading = distinctShots(around)
    .map((line) => ({ ...line, worth: quadratureWorth(inPlay, bag[line.ballIndex], setup.bowler, line.aim, pricing) }))
    .sort(byWorth)
    .slice(0, ROLLED_LINES)
  const rolled = (lines: readonly PricedLine[], misses: Float64Array): PricedLine[] => {
    const worths = new Float64Array(misses.length / ERROR_DIMENSIONS)
    return lines
      .map((line) => {
        const worthOf = firstBallWorth(pricing, line.aim.speedStep)
        deliverAll(inPlay, bag[line.ballIndex], setup.bowler, line.aim, 'strike', misses, worthOf, worths)
        return { ...line, worth: meanOf(worths) }
      })
      .sort(byWorth)
  }
  const last = rolled(leading, ROLLED_MISSES).slice(0, LAST_LINES)
  return decisionOf(setup, rolled(last, LAST_MISSES)[0])
}
