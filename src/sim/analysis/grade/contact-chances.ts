import { arcTangent } from '../../exact-math.js'
import { samplesFrom } from '../../sample-ranges.js'
import { metresToBoard } from '../../units.js'
import { dynamicsOf } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import { callContact } from '../../world/block/seen.js'
import type { BlockSetup, Contact, Decision } from '../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { type Belief, weights } from '../belief/belief.js'
import { imaginedLane } from '../belief/imagined-lanes.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../shots/delivery-nodes.js'

/** How likely a ball was to meet the rack so. */
export interface ContactChance {
  readonly contact: Contact
  readonly chance: number
}

/** Deliveries that stand for the whole belief, shared out by weight. */
const DELIVERIES = 1200
/** No kind of oil is judged by more than this many. */
const MOST_DELIVERIES = 256

const outcome = newRollOutcome()
const launch = scratchLaunch()

/** How a choice was to be expected to come in. */
export interface ExpectedReaction {
  /** Likeliest first, adding up to 1. */
  readonly contacts: readonly ContactChance[]
  /** Mean entry angle of those deliveries that come into the pocket; null where next to none does. */
  readonly pocketAngleRadians: number | null
}

type Thrower = Pick<BlockSetup, 'bag' | 'bowler'>

/** Below this a pocket is too rare for its angle to be told. */
const LEAST_POCKET = 0.02

/**
 * How a choice was to be expected to meet a full rack, over the bowler's misses and over the oil as far as it could be
 * known; likeliest first, adding up to 1.
 */
export function contactChances(setup: Thrower, belief: Belief, lane: number, decision: Decision): ContactChance[] {
  return [...expectedReaction(setup, belief, lane, decision).contacts]
}

/** The same with the angle at which it was to be expected to come into the pocket. */
export function expectedReaction(
  setup: Thrower,
  belief: Belief,
  lane: number,
  decision: Decision,
  deliveries = DELIVERIES,
): ExpectedReaction {
  const ball = setup.bag.find(({ id }) => id === decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const dynamics = dynamicsOf(ball)
  const nodes = deliveryNodes(deliveries, samplesFrom('contactChances', deliveries))
  const chances = new Map<Contact, number>()
  const meant = meantThrow(setup.bowler, decision.aim, decision.release)
  let next = 0
  let pocketAngles = 0
  weights(belief).forEach((weight, hypothesis) => {
    const count = Math.min(MOST_DELIVERIES, Math.ceil(weight * deliveries))
    if (count === 0) return
    const { film, steps } = imaginedLane(belief, hypothesis, lane, setup.bowler.hand)
    for (let k = 0; k < count; k++) {
      deliverInto(launch, meant, nodes, next * ERROR_DIMENSIONS)
      next = (next + 1) % deliveries
      rollBall(film, steps, dynamics, launch, outcome)
      const contact =
        outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
          ? 'gutter'
          : callContact(metresToBoard(outcome.lateralAtPinsMetres))
      chances.set(contact, (chances.get(contact) ?? 0) + weight / count)
      if (contact === 'pocket') pocketAngles += (arcTangent(outcome.tangentAtPins) * weight) / count
    }
  })
  const pocket = chances.get('pocket') ?? 0
  return {
    contacts: [...chances].map(([contact, chance]) => ({ contact, chance })).sort((a, b) => b.chance - a.chance),
    pocketAngleRadians: pocket < LEAST_POCKET ? null : pocketAngles / pocket,
  }
}
