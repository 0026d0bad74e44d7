import { FILM_ROW_METRES, FILM_ROWS, type OilFilm } from '../lane/film.js'
import { feetToMetres, LANE_WIDTH_METRES, STANDARD_GRAVITY } from '../units.js'
import type { BallDynamics } from './dynamics.js'
import { filmUnderBall } from './film-under-ball.js'
import { frictionCoefficient } from './friction.js'
import type { Launch, RollOutcome } from './launch.js'
import { BALL_RADIUS_METRES } from './specification.js'
import type { StepTable } from './step-table.js'

export { type Launch, newRollOutcome, type RollOutcome } from './launch.js'

const PINS_METRES = feetToMetres(60)
/** Places count half feet from the middle of film row 0, so that rows have whole numbers. */
const PINS_PLACE = PINS_METRES / FILM_ROW_METRES - 0.5
/** Way the track takes to match the film it runs over (chosen so that reactions look right). */
const FILM_MATCHING_METRES = feetToMetres(6)
const MATCHING_PER_PLACE = FILM_ROW_METRES / FILM_MATCHING_METRES
const HOOK_SHARE_OF_DRY_FRICTION = 1 / 3
/** Below this the release rolls already. */
const NO_SLIP_METRES_PER_SECOND = 1e-9

/**
 * Rolls a ball from touchdown to the pins. The direction of the slip never turns while the ball skids, whatever the
 * friction does, so three scalars follow the whole skid over the distance x down the lane: the speed J = ∫ μg dt that
 * friction has taken, the lateral place y and the film O carried on the track:
 *
 *     dJ/dx = μ(film + c·O, s₀ − kJ)·g / vx    dy/dx = vy / vx    dO/dx = (film − O) / L
 *
 * with v = v₀ − u·J, u the unit slip and k = 1 + R²/rg². At J = s₀/k slip is gone and the ball rolls straight on.
 * (Coulomb friction on a sphere: Hopkins & Patterson, Am. J. Phys. 45, 1977, for a changing coefficient.)
 * Steps by Kutta's third-order rule, each taking over the last slope of the one before.
 *
 * Past an edge of the lane the path goes on as on the edge board, to keep results smooth; leftLaneMetres tells.
 * @param steps of this film, from buildStepTable
 * @param path if given, gets y in metres at the middle of each film row; NaN where the ball is not on the lane
 */
export function rollBall(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  launch: Launch,
  out: RollOutcome,
  path?: Float64Array,
): void {
  const { microns } = film
  const { friction, slipFactor, carriedFilmShare } = ball
  const { speedMetresPerSecond, directionX, directionY, startMetres } = launch
  const rollSpeed = launch.spinRadiansPerSecond * BALL_RADIUS_METRES * launch.cosineTilt
  const slipAlong = speedMetresPerSecond - rollSpeed * launch.cosineRotation
  const slipAcross = -rollSpeed * launch.sineRotation
  const startSlip = Math.sqrt(slipAlong * slipAlong + slipAcross * slipAcross)
  const slipping = startSlip > NO_SLIP_METRES_PER_SECOND
  const slipX = slipping ? (slipAlong * directionX - slipAcross * directionY) / startSlip : 0
  const slipY = slipping ? (slipAlong * directionY + slipAcross * directionX) / startSlip : 0
  const slipXPerRow = slipX / FILM_ROW_METRES
  const startX = speedMetresPerSecond * directionX
  const startY = speedMetresPerSecond * directionY
  const lossAtRoll = slipping ? startSlip / slipFactor : 0
  const hookFriction = friction.dryFriction * HOOK_SHARE_OF_DRY_FRICTION
  const rollSlope = ((startY - slipY * lossAtRoll) / (startX - slipX * lossAtRoll)) * FILM_ROW_METRES

  let place = startMetres / FILM_ROW_METRES - 0.5
  let loss = 0
  let lateral = launch.lateralMetres
  let time = startMetres / startX
  let breakpoint = place
  let breakpointLateral = lateral
  let hookPlace = Number.POSITIVE_INFINITY
  let leftPlace = lateral < 0 || lateral > LANE_WIDTH_METRES ? place : Number.POSITIVE_INFINITY
  let rollPlace = slipping ? Number.POSITIVE_INFINITY : place

  let bare = filmUnderBall(microns, place, lateral)
  let carried = 0
  let coefficient = frictionCoefficient(friction, bare, startSlip)
  if (coefficient >= hookFriction) hookPlace = place
  let paceA = FILM_ROW_METRES / startX
  let lossA = coefficient * STANDARD_GRAVITY * paceA
  let slopeA = startY * paceA
  let carriedA = bare * MATCHING_PER_PLACE

  path?.fill(Number.NaN)
  if (path !== undefined && place >= 0 && place === Math.floor(place)) path[place] = lateral

  while (place < PINS_PLACE && rollPlace === Number.POSITIVE_INFINITY) {
    const whole = Math.ceil(place)
    let next = whole === place ? Math.min(whole + steps[whole]!, PINS_PLACE) : whole
    let length = next - place

    const coefficientA = coefficient
    const half = 0.5 * length
    const lossB0 = loss + half * lossA
    bare = filmUnderBall(microns, place + half, lateral + half * slopeA)
    const carriedB0 = carried + half * carriedA
    const slipB = startSlip - slipFactor * lossB0
    coefficient = frictionCoefficient(friction, bare + carriedFilmShare * carriedB0, Math.max(0, slipB))
    const paceB = FILM_ROW_METRES / (startX - slipX * lossB0)
    const lossB = coefficient * STANDARD_GRAVITY * paceB
    const slopeB = (startY - slipY * lossB0) * paceB
    const carriedB = (bare - carriedB0) * MATCHING_PER_PLACE

    const lossC0 = loss + length * (2 * lossB - lossA)
    bare = filmUnderBall(microns, place + length, lateral + length * (2 * slopeB - slopeA))
    const carriedC0 = carried + length * (2 * carriedB - carriedA)
    const slipC = startSlip - slipFactor * lossC0
    coefficient = frictionCoefficient(friction, bare + carriedFilmShare * carriedC0, Math.max(0, slipC))
    const paceC0 = FILM_ROW_METRES / (startX - slipX * lossC0)
    const lossC = coefficient * STANDARD_GRAVITY * paceC0
    const carriedC = (bare - carriedC0) * MATCHING_PER_PLACE

    const sixth = length / 6
    let nextLoss = loss + sixth * (lossA + 4 * lossB + lossC)
    const lossAtMiddle = 0.5 * (loss + nextLoss) + 0.125 * length * (lossA - lossC)
    let paceM = paceB + slipXPerRow * (lossAtMiddle - lossB0) * paceB * paceB
    let slopeM = (startY - slipY * lossAtMiddle) * paceM
    let paceC = paceC0 + slipXPerRow * (nextLoss - lossC0) * paceC0 * paceC0
    let slopeC = (startY - slipY * nextLoss) * paceC
    if (coefficient >= hookFriction && hookPlace === Number.POSITIVE_INFINITY) {
      hookPlace = place + (length * (hookFriction - coefficientA)) / (coefficient - coefficientA)
    }
    if (nextLoss >= lossAtRoll) {
      const missing = lossAtRoll - loss
      const gain = nextLoss - loss
      const end = rollShare(length * lossA, gain, missing)
      const lossHalfway = loss + 0.5 * end * (length * lossA + 0.5 * end * (gain - length * lossA))
      length *= end
      nextLoss = lossAtRoll
      paceM = FILM_ROW_METRES / (startX - slipX * lossHalfway)
      slopeM = (startY - slipY * lossHalfway) * paceM
      paceC = FILM_ROW_METRES / (startX - slipX * lossAtRoll)
      slopeC = rollSlope
      next = place + length
      rollPlace = next
    }
    const nextLateral = lateral + (length / 6) * (slopeA + 4 * slopeM + slopeC)
    time += (length / 6) * (paceA + 4 * paceM + paceC)
    if (slopeA < 0 && slopeC >= 0) {
      const share = slopeA / (slopeA - slopeC)
      breakpoint = place + share * length
      breakpointLateral = lateral + 0.5 * share * length * slopeA
    }
    if ((nextLateral < 0 || nextLateral > LANE_WIDTH_METRES) && leftPlace === Number.POSITIVE_INFINITY) {
      const edge = nextLateral < 0 ? 0 : LANE_WIDTH_METRES
      leftPlace = place + (length * (edge - lateral)) / (nextLateral - lateral)
    }
    if (path !== undefined) writePath(path, place, length, lateral, slopeA, nextLateral, slopeC)

    place = next
    loss = nextLoss
    lateral = nextLateral
    carried += sixth * (carriedA + 4 * carriedB + carriedC)
    paceA = paceC
    lossA = coefficient * STANDARD_GRAVITY * paceC
    slopeA = slopeC
    carriedA = carriedC
  }

  const remaining = PINS_PLACE - place
  const atPins = lateral + remaining * slopeA
  if (path !== undefined && remaining > 0) writePath(path, place, remaining, lateral, slopeA, atPins, slopeA)
  if (leftPlace === Number.POSITIVE_INFINITY && (atPins < 0 || atPins > LANE_WIDTH_METRES)) {
    leftPlace = place + ((atPins < 0 ? 0 : LANE_WIDTH_METRES) - lateral) / slopeA
  }
  if (atPins < breakpointLateral) {
    breakpoint = PINS_PLACE
    breakpointLateral = atPins
  }
  if (breakpointLateral < 0 && breakpoint < leftPlace) leftPlace = breakpoint
  if (path !== undefined && leftPlace < FILM_ROWS) path.fill(Number.NaN, Math.max(0, Math.floor(leftPlace) + 1))

  const velocityX = startX - slipX * loss
  const velocityY = startY - slipY * loss
  out.lateralAtPinsMetres = atPins
  out.tangentAtPins = slopeA / FILM_ROW_METRES
  out.speedAtPinsMetresPerSecond = Math.sqrt(velocityX * velocityX + velocityY * velocityY)
  out.timeToPinsSeconds = time + remaining * paceA
  out.slipAtPins = rollPlace === Number.POSITIVE_INFINITY ? Math.max(0, startSlip - slipFactor * loss) : 0
  out.hookStartMetres = (hookPlace + 0.5) * FILM_ROW_METRES
  out.rollStartMetres = (rollPlace + 0.5) * FILM_ROW_METRES
  out.breakpointMetres = (breakpoint + 0.5) * FILM_ROW_METRES
  out.breakpointLateralMetres = breakpointLateral
  out.leftLaneMetres = (leftPlace + 0.5) * FILM_ROW_METRES
}

/** Share of a step at which the parabola with the given first slope and whole gain has gained `missing`. */
function rollShare(slope: number, gain: number, missing: number): number {
  return (2 * missing) / (slope + Math.sqrt(slope * slope + 4 * (gain - slope) * missing))
}

/** Fills in the rows a step has passed, by the cubic that fits place and slope at both ends. */
function writePath(
  path: Float64Array,
  place: number,
  length: number,
  from: number,
  slopeFrom: number,
  to: number,
  slopeTo: number,
): void {
  for (let row = Math.max(0, Math.floor(place) + 1); row <= place + length && row < FILM_ROWS; row++) {
    const share = (row - place) / length
    const left = 1 - share
    path[row] =
      from * left * left * (1 + 2 * share) +
      to * share * share * (1 + 2 * left) +
      length * share * left * (slopeFrom * left - slopeTo * share)
  }
}
