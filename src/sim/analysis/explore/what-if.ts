import { stream } from '../../random.js'
import { boardToMetres, metresToBoard } from '../../units.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import { callContact } from '../../world/block/seen.js'
import type { BlockState, Contact, Decision } from '../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { countPins, mirrorMask } from '../../world/pins/leaves.js'
import { drawRackNature } from '../../world/pins/nature.js'
import { throwAtRack } from '../../world/pins/rack.js'
import { type CarryDistribution, carryDistribution, newCarryDistribution } from '../carry/carry-table.js'
import { laneInPlay, spotOf } from '../oracle/known-choice.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../shots/delivery-nodes.js'
import { firstBallWorth } from '../shots/direct-worth.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import { weighSecondBall } from '../value/worth.js'
import { facesNewRack } from '../view/player-view.js'

/** What a choice comes to over many deliveries of the same bowler on the same oil. */
export interface WhatIf {
  readonly decision: Decision
  readonly deliveries: number
  /** Board at the headpin's row that 10, 50 and 90 % of the balls that stay on the lane come in below; null where none does. */
  readonly entryBoards: readonly [low: number, middle: number, high: number] | null
  readonly contacts: readonly { readonly contact: Contact; readonly share: number }[]
  /** Pins left standing, likeliest first; 0 is a strike, or a spare. */
  readonly leaves: readonly { readonly mask: number; readonly share: number }[]
  /** Expected game pins against the bowler's average first ball, or against felling nothing. */
  readonly worthPins: number
  readonly standardErrorPins: number
}

const FIRST_BALL_DELIVERIES = 1024
/** Each spare attempt is thrown at a live rack, which costs about a millisecond. */
const SPARE_DELIVERIES = 192
const NODES_START = 90_000
const HEADPIN_LATERAL_METRES = boardToMetres(20)

const outcome = newRollOutcome()
const launch = scratchLaunch()
const carried = newCarryDistribution()

/** The distribution of a choice's results on the oil that lies before the coming throw. */
export function whatIf(before: BlockState, decision: Decision): WhatIf {
  const { setup } = before
  const ballIndex = setup.bag.findIndex((one) => one.id === decision.ballId)
  const ball = dynamicsOfBag(setup.bag)[ballIndex]
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const isFirstBall = facesNewRack(before)
  const count = isFirstBall ? FIRST_BALL_DELIVERIES : SPARE_DELIVERIES
  const nodes = deliveryNodes(count, NODES_START)
  const { film, steps } = laneInPlay(setup, before.lanes[spotOf(before).lane]!)
  const pins = isFirstBall ? fullRack(before, decision) : spareRack(before, ball.massKilograms)
  const entries: number[] = []
  const contacts = new Map<Contact, number>()
  const leaves = new Map<number, number>()
  const worths = new Float64Array(count)
  const meant = meantThrow(setup.bowler, decision.aim, decision.release)
  for (let k = 0; k < count; k++) {
    deliverInto(launch, meant, nodes, k * ERROR_DIMENSIONS)
    rollBall(film, steps, ball, launch, outcome)
    const inGutter = outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
    const entry = metresToBoard(outcome.lateralAtPinsMetres)
    if (!inGutter) entries.push(entry)
    addTo(contacts, inGutter ? 'gutter' : callContact(entry), 1 / count)
    worths[k] = pins.meet(inGutter, k)
    for (let leave = 0; leave < pins.after.count; leave++) {
      const mask = pins.after.mask[leave]!
      addTo(leaves, setup.bowler.hand === 'left' ? mirrorMask(mask) : mask, pins.after.chance[leave]! / count)
    }
  }
  const { mean, standardError } = meanAndError(worths)
  return {
    decision,
    deliveries: count,
    entryBoards: quantilesOf(entries),
    contacts: sharesOf(contacts).map(([contact, share]) => ({ contact, share })),
    leaves: sharesOf(leaves).map(([mask, share]) => ({ mask, share })),
    worthPins: mean,
    standardErrorPins: standardError,
  }
}

/** A rack that answers the ball just rolled: what it is worth, and in `after` what it leaves. */
interface RackAnswer {
  readonly after: CarryDistribution
  readonly meet: (inGutter: boolean, delivery: number) => number
}

function fullRack(before: BlockState, decision: Decision): RackAnswer {
  const worthOf = firstBallWorth(pricingOf(before.setup), decision.aim.speedStep)
  return {
    after: carried,
    meet(inGutter) {
      if (inGutter) leaveOne(carried, before.standing)
      else {
        const offset = HEADPIN_LATERAL_METRES - outcome.lateralAtPinsMetres
        carryDistribution(offset, Math.atan(outcome.tangentAtPins), outcome.speedAtPinsMetresPerSecond, carried)
      }
      return worthOf(outcome)
    },
  }
}

function spareRack(before: BlockState, ballMassKilograms: number): RackAnswer {
  const { setup } = before
  const standing = setup.bowler.hand === 'left' ? mirrorMask(before.standing) : before.standing
  const stood = countPins(standing)
  const { weights } = pricingOf(setup)
  return {
    after: carried,
    meet(inGutter, delivery) {
      const after = inGutter
        ? standing
        : throwAtRack(
            {
              offsetMetres: HEADPIN_LATERAL_METRES - outcome.lateralAtPinsMetres,
              angleRadians: Math.atan(outcome.tangentAtPins),
              speedMetresPerSecond: outcome.speedAtPinsMetresPerSecond,
              ballMassKilograms,
              standing,
            },
            natureOf(delivery),
          ).standing
      leaveOne(carried, after)
      return weighSecondBall(weights, 10 - stood, after === 0 ? 1 : 0, stood - countPins(after))
    },
  }
}

const natureOf = (index: number) =>
  drawRackNature(stream({ seed: 'what-if', game: 0, frame: 0, ball: 0, purpose: 'solver', index }))

function leaveOne(distribution: CarryDistribution, mask: number): void {
  distribution.count = 1
  distribution.mask[0] = mask
  distribution.chance[0] = 1
}

function addTo<Key>(sums: Map<Key, number>, key: Key, share: number): void {
  sums.set(key, (sums.get(key) ?? 0) + share)
}

const sharesOf = <Key>(sums: Map<Key, number>): [Key, number][] => [...sums].sort((a, b) => b[1] - a[1])

function quantilesOf(values: readonly number[]): WhatIf['entryBoards'] {
  if (values.length === 0) return null
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!
  return [at(0.1), at(0.5), at(0.9)]
}

function meanAndError(values: Float64Array): { mean: number; standardError: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const square = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0)
  return { mean, standardError: Math.sqrt(square / (values.length - 1) / values.length) }
}
