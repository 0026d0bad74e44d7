import { lazily } from '../../lazily.js'
import { samplesFrom } from '../../sample-ranges.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBalls } from '../../world/ball/motion.js'
import { deliverInto, type MeantThrow, scratchLaunch } from '../../world/bowler/release.js'
import type { Pricing } from '../value/pricing.js'
import { lookUpWorth } from '../value/value-table.js'
import { ANGLE_NODES, angleNodes, angleWeights, NARROW_SIGMA } from './angle-mixture.js'
import { deliveryNodes, ERROR_DIMENSIONS } from './delivery-nodes.js'
import type { FilmInPlay } from './direct-worth.js'
import { pseudoInverse } from './least-squares.js'
import { LATERAL_NODES, LATERAL_WEIGHTS, shareAbove } from './line-value.js'

/** Throws rolled to learn how one line answers to its misses on one lane. */
export const RESPONSE_ROLLS = 16
/** Sets of misses that lanes take by turns, so that what one set overlooks is not overlooked on all lanes. */
const DESIGNS = 8
/** The best conditioned of so many are taken. */
const CANDIDATES = 96
/** Misses rolled are this much wider than the bowler's, so that little is left beyond them. */
const WIDENING = 1.2

/** Terms of the fit: powers of the angle's miss up to the fourth, the other four misses, and each of them times the angle's. */
const ANGLE_TERMS = 5
const OTHERS = [0, 2, 3, 4] as const
const TERMS = ANGLE_TERMS + 2 * OTHERS.length
const LATERAL = ANGLE_TERMS
const LATERAL_BY_ANGLE = ANGLE_TERMS + OTHERS.length
/** The misses that only smear the place at the pins: speed, spin and rotation. */
const SMEARING = [1, 2, 3] as const

/** Figures of a roll that are fitted: place, tangent and speed at the pins, and the outermost place on the way. */
enum Fitted {
  lateral,
  tangent,
  speed,
  outermost,
  count,
}

interface Design {
  /** RESPONSE_ROLLS misses. */
  readonly errors: Float64Array
  /** What of each roll goes into each term, term by term. */
  readonly fit: Float64Array
}

const designs = lazily((): readonly Design[] => {
  const start = samplesFrom('responses', CANDIDATES * RESPONSE_ROLLS)
  return Array.from({ length: CANDIDATES }, (_, at) => {
    const errors = deliveryNodes(RESPONSE_ROLLS, start + at * RESPONSE_ROLLS).map((normal) => WIDENING * normal)
    const terms = Array.from({ length: RESPONSE_ROLLS }, (__, roll) => termsAt(errors, roll * ERROR_DIMENSIONS))
    const fit = Float64Array.from(pseudoInverse(terms).flat())
    return { errors, fit, amplifies: fit.reduce((sum, share) => sum + share * share, 0) }
  })
    .sort((a, b) => a.amplifies - b.amplifies)
    .slice(0, DESIGNS)
})

function termsAt(errors: Float64Array, from: number): number[] {
  const angle = errors[from + 1]
  const others = OTHERS.map((at) => errors[from + at])
  const square = angle * angle
  return [1, angle, square, square * angle, square * square, ...others, ...others.map((miss) => miss * angle)]
}

const launches = Array.from({ length: RESPONSE_ROLLS }, scratchLaunch)
const outcomes = Array.from({ length: RESPONSE_ROLLS }, newRollOutcome)
const figures = new Float64Array(Fitted.count * RESPONSE_ROLLS)
const response = new Float64Array(Fitted.count * TERMS)

/**
 * Expected worth of one line on one film, from how its place, angle and speed at the pins answer to the misses: a few
 * throws rolled with misses of every kind at once, a polynomial through them by least squares, and the bowler's misses
 * taken over it, laydown and angle node by node, the others as a smear. Some 0.05 to 0.25 pin off on a single lane where
 * two dozen throws rolled and averaged are 1.3 to 1.7 off, since worth is a narrow peak but what it is a function of is not.
 *
 * @param design which set of misses is rolled: any whole number from 0
 */
export function responseWorth(
  { film, steps }: FilmInPlay,
  ball: BallDynamics,
  meant: MeantThrow,
  pricing: Pricing,
  design: number,
): number {
  const { errors, fit } = designs()[design % DESIGNS]
  for (let k = 0; k < RESPONSE_ROLLS; k++) deliverInto(launches[k], meant, errors, k * ERROR_DIMENSIONS)
  rollBalls(film, steps, ball, launches, outcomes, RESPONSE_ROLLS)
  for (let k = 0; k < RESPONSE_ROLLS; k++) {
    const outcome = outcomes[k]
    figures[Fitted.lateral * RESPONSE_ROLLS + k] = outcome.lateralAtPinsMetres
    figures[Fitted.tangent * RESPONSE_ROLLS + k] = outcome.tangentAtPins
    figures[Fitted.speed * RESPONSE_ROLLS + k] = outcome.speedAtPinsMetresPerSecond
    figures[Fitted.outermost * RESPONSE_ROLLS + k] = outcome.breakpointLateralMetres
  }
  for (let figure = 0; figure < Fitted.count; figure++)
    for (let term = 0; term < TERMS; term++) {
      let sum = 0
      for (let k = 0; k < RESPONSE_ROLLS; k++)
        sum += fit[term * RESPONSE_ROLLS + k] * figures[figure * RESPONSE_ROLLS + k]
      response[figure * TERMS + term] = sum
    }
  return worthOfResponse(pricing)
}

function worthOfResponse({ table, gutterWorth }: Pricing): number {
  let worth = 0
  for (let side = 0; side < LATERAL_NODES.length; side++) {
    const laydown = LATERAL_NODES[side]
    for (let node = 0; node < ANGLE_NODES; node++) {
      const angle = angleNodes[node]
      const weight = LATERAL_WEIGHTS[side] * angleWeights[node]
      const narrow = NARROW_SIGMA * slopeAt(Fitted.outermost, angle, laydown)
      const onLane = shareAbove(placeAt(Fitted.outermost, angle, laydown), Math.abs(narrow))
      worth += weight * (1 - onLane) * gutterWorth
      if (onLane === 0) continue
      const byAngle = NARROW_SIGMA * slopeAt(Fitted.lateral, angle, laydown)
      let variance = byAngle * byAngle
      for (const miss of SMEARING) {
        const moves = response[LATERAL + miss] + response[LATERAL_BY_ANGLE + miss] * angle
        variance += moves * moves
      }
      worth +=
        weight *
        onLane *
        lookUpWorth(
          table,
          placeAt(Fitted.lateral, angle, laydown),
          placeAt(Fitted.tangent, angle, laydown),
          Math.sqrt(variance),
          placeAt(Fitted.speed, angle, laydown),
        )
    }
  }
  return worth
}

function placeAt(figure: Fitted, angle: number, laydown: number): number {
  const c = figure * TERMS
  const powers = response[c] + angle * (response[c + 1] + angle * (response[c + 2] + angle * highPowers(c, angle)))
  return powers + laydown * (response[c + LATERAL] + angle * response[c + LATERAL_BY_ANGLE])
}

const highPowers = (c: number, angle: number): number => response[c + 3] + angle * response[c + 4]

/** How fast a figure changes with the angle's miss. */
function slopeAt(figure: Fitted, angle: number, laydown: number): number {
  const c = figure * TERMS
  return (
    response[c + 1] +
    angle * (2 * response[c + 2] + angle * (3 * response[c + 3] + angle * 4 * response[c + 4])) +
    laydown * response[c + LATERAL_BY_ANGLE]
  )
}
