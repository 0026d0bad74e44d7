import { metresToBoard } from '../../../units.js'
import { dynamicsOf } from '../../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../world/ball/motion.js'
import { callContact } from '../../../world/block/seen.js'
import type { BlockSetup, Contact, Decision } from '../../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../../world/lane/geometry.js'
import { type Belief, weights } from '../../belief/belief.js'
import { imaginedLane } from '../../belief/imagined-lanes.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../../shots/delivery-nodes.js'

/** How likely a ball was to meet the rack so. */
export interface ContactChance {
  readonly contact: Contact
  readonly chance: number
}

/** Deliveries that stand for the whole belief, shared out by weight. */
const DELIVERIES = 1200
/** No kind of oil is judged by more than this many. */
const MOST_DELIVERIES = 256
const NODES_START = 120_000

const outcome = newRollOutcome()
const launch = scratchLaunch()

/**
 * How a choice was to be expected to meet a full rack, over the bowler's misses and over the oil as far as it could be
 * known; likeliest first, adding up to 1.
 */
export function contactChances(setup: BlockSetup, belief: Belief, lane: number, decision: Decision): ContactChance[] {
  const ball = setup.bag.find(({ id }) => id === decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const dynamics = dynamicsOf(ball)
  const nodes = deliveryNodes(DELIVERIES, NODES_START)
  const chances = new Map<Contact, number>()
  const meant = meantThrow(setup.bowler, decision.aim, decision.release)
  let next = 0
  weights(belief).forEach((weight, hypothesis) => {
    const count = Math.min(MOST_DELIVERIES, Math.ceil(weight * DELIVERIES))
    if (count === 0) return
    const { film, steps } = imaginedLane(belief, hypothesis, lane, setup.bowler.hand)
    for (let k = 0; k < count; k++) {
      deliverInto(launch, meant, nodes, next * ERROR_DIMENSIONS)
      next = (next + 1) % DELIVERIES
      rollBall(film, steps, dynamics, launch, outcome)
      const contact =
        outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
          ? 'gutter'
          : callContact(metresToBoard(outcome.lateralAtPinsMetres))
      chances.set(contact, (chances.get(contact) ?? 0) + weight / count)
    }
  })
  return [...chances].map(([contact, chance]) => ({ contact, chance })).sort((a, b) => b.chance - a.chance)
}
