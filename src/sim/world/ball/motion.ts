import { BOARD_WIDTH_METRES, feetToMetres, LANE_WIDTH_METRES, STANDARD_GRAVITY } from '../../units.js'
import { FILM_BOARDS, FILM_ROW_METRES, FILM_ROWS, type OilFilm } from '../lane/film.js'
import type { BallDynamics } from './dynamics.js'
import { filmBetween, filmUnderBall } from './film-under-ball.js'
import { frictionCoefficient } from './friction.js'
import type { Launch, RollOutcome } from './launch.js'
import { writeRowsPassed } from './path-rows.js'
import { BALL_RADIUS_METRES } from './specification.js'
import type { StepTable } from './step-table.js'

export { type Launch, newRollOutcome, type RollOutcome } from './launch.js'

/** How many throws may roll together. */
export const MOST_TOGETHER = 48

const PINS_METRES = feetToMetres(60)
/** Places count half feet from the middle of film row 0, so that rows have whole numbers. */
const PINS_PLACE = PINS_METRES / FILM_ROW_METRES - 0.5
/** Way the track takes to match the film it runs over (chosen so that reactions look right). */
const FILM_MATCHING_METRES = feetToMetres(6)
const MATCHING_PER_PLACE = FILM_ROW_METRES / FILM_MATCHING_METRES
const HOOK_SHARE_OF_DRY_FRICTION = 1 / 3
/** Below this the release rolls already. */
const NO_SLIP_METRES_PER_SECOND = 1e-9

/** What is followed of a ball: a number each. Places count half feet from the middle of film row 0, slopes are per half foot. */
enum Of {
  /** Slip in m/s as the ball touches down, its unit vector, and the first velocity. */
  startSlip,
  slipX,
  slipY,
  slipXPerRow,
  startX,
  startY,
  /** Speed taken by friction when the slip is gone, and dy a row from there on. */
  lossAtRoll,
  rollSlope,
  /** Speed taken by friction so far, place across the lane, time, and film on the track. */
  loss,
  lateral,
  time,
  carried,
  /** Friction where the ball is, and how fast those four change with the place. */
  coefficient,
  lossSlope,
  lateralSlope,
  pace,
  carriedSlope,
  /** The rightmost place so far; where the hook began, the lane was left and the slip ended, or Infinity. */
  breakpoint,
  breakpointLateral,
  hookPlace,
  leftPlace,
  rollPlace,
  count,
}

/** All numbers of the first ball, then of the second, and so on. */
const together = new Float64Array(MOST_TOGETHER * Of.count)
/** Where the numbers of those balls begin that still slip; the first few count. */
const stillSlipping = new Uint16Array(MOST_TOGETHER)
const oneLaunch: Launch[] = []
const oneOutcome: RollOutcome[] = []

/**
 * Rolls a ball from touchdown to the pins; see rollBalls.
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
  oneLaunch[0] = launch
  oneOutcome[0] = out
  rollBalls(film, steps, ball, oneLaunch, oneOutcome, 1, path)
}

/**
 * Rolls several throws of one ball, each by itself, from touchdown to the pins. The direction of the slip never turns
 * while a ball skids, whatever the friction does, so three scalars follow the whole skid over the distance x down the
 * lane: the speed J = ∫ μg dt that friction has taken, the lateral place y and the film O carried on the track:
 *
 *     dJ/dx = μ(film + c·O, s₀ − kJ)·g / vx    dy/dx = vy / vx    dO/dx = (film − O) / L
 *
 * with v = v₀ − u·J, u the unit slip and k = 1 + R²/rg². At J = s₀/k slip is gone and the ball rolls straight on.
 * (Coulomb friction on a sphere: Hopkins & Patterson, Am. J. Phys. 45, 1977, for a changing coefficient.)
 * Steps by Kutta's third-order rule, each taking over the last slope of the one before.
 *
 * Past an edge of the lane the path goes on as on the edge board, to keep results smooth; leftLaneMetres tells.
 * Throws rolled together come out as rolled alone, to the last bit, in two thirds of the time: while one waits for its
 * last figure, the processor has the others to go on with.
 * @param steps of this film, from buildStepTable
 * @param launches at most MOST_TOGETHER, touching down equally far past the foul line; `outcomes` has one for each
 * @param path of a single ball, if given; see rollBall
 * @throws RangeError for too many launches, or some that touch down elsewhere than the first
 */
export function rollBalls(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  launches: readonly Launch[],
  outcomes: readonly RollOutcome[],
  count: number,
  path?: Float64Array,
): void {
  if (count === 0) return
  const startPlace = launches[0]!.startMetres / FILM_ROW_METRES - 0.5
  path?.fill(Number.NaN)
  if (path !== undefined && startPlace >= 0 && startPlace === Math.floor(startPlace))
    path[startPlace] = launches[0]!.lateralMetres
  const slippingCount = touchDown(film, ball, launches, count, startPlace)
  skid(film, steps, ball, startPlace, slippingCount, path)
  for (let k = 0; k < count; k++) rollOn(k * Of.count, ball, outcomes[k]!, path)
}

/** Puts the balls on the lane, and says how many of them slip. */
function touchDown(
  film: OilFilm,
  ball: BallDynamics,
  launches: readonly Launch[],
  count: number,
  place: number,
): number {
  if (count > MOST_TOGETHER) throw new RangeError(`At most ${MOST_TOGETHER} throws roll together, not ${count}.`)
  const { friction, slipFactor } = ball
  const hookFriction = friction.dryFriction * HOOK_SHARE_OF_DRY_FRICTION
  const { startMetres } = launches[0]!
  let slippingCount = 0
  for (let k = 0; k < count; k++) {
    const at = k * Of.count
    const launch = launches[k]!
    if (launch.startMetres !== startMetres) throw new RangeError('Throws that roll together touch down equally far on.')
    const { speedMetresPerSecond, directionX, directionY, lateralMetres: lateral } = launch
    const rollSpeed = launch.spinRadiansPerSecond * BALL_RADIUS_METRES * launch.cosineTilt
    const slipAlong = speedMetresPerSecond - rollSpeed * launch.cosineRotation
    const slipAcross = -rollSpeed * launch.sineRotation
    const startSlip = Math.sqrt(slipAlong * slipAlong + slipAcross * slipAcross)
    const isSlipping = startSlip > NO_SLIP_METRES_PER_SECOND
    const slipX = isSlipping ? (slipAlong * directionX - slipAcross * directionY) / startSlip : 0
    const slipY = isSlipping ? (slipAlong * directionY + slipAcross * directionX) / startSlip : 0
    const startX = speedMetresPerSecond * directionX
    const startY = speedMetresPerSecond * directionY
    const lossAtRoll = isSlipping ? startSlip / slipFactor : 0
    const bare = filmUnderBall(film.microns, place, lateral)
    const coefficient = frictionCoefficient(friction, bare, startSlip)
    const pace = FILM_ROW_METRES / startX
    together[at + Of.startSlip] = startSlip
    together[at + Of.slipX] = slipX
    together[at + Of.slipY] = slipY
    together[at + Of.slipXPerRow] = slipX / FILM_ROW_METRES
    together[at + Of.startX] = startX
    together[at + Of.startY] = startY
    together[at + Of.lossAtRoll] = lossAtRoll
    together[at + Of.rollSlope] = ((startY - slipY * lossAtRoll) / (startX - slipX * lossAtRoll)) * FILM_ROW_METRES
    together[at + Of.loss] = 0
    together[at + Of.lateral] = lateral
    together[at + Of.time] = startMetres / startX
    together[at + Of.carried] = 0
    together[at + Of.coefficient] = coefficient
    together[at + Of.pace] = pace
    together[at + Of.lossSlope] = coefficient * STANDARD_GRAVITY * pace
    together[at + Of.lateralSlope] = startY * pace
    together[at + Of.carriedSlope] = bare * MATCHING_PER_PLACE
    together[at + Of.breakpoint] = place
    together[at + Of.breakpointLateral] = lateral
    together[at + Of.hookPlace] = coefficient >= hookFriction ? place : Number.POSITIVE_INFINITY
    together[at + Of.leftPlace] = lateral < 0 || lateral > LANE_WIDTH_METRES ? place : Number.POSITIVE_INFINITY
    together[at + Of.rollPlace] = isSlipping ? Number.POSITIVE_INFINITY : place
    if (isSlipping) stillSlipping[slippingCount++] = at
  }
  return slippingCount
}

/** Follows the balls until each rolls or is at the pins. */
function skid(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  startPlace: number,
  startCount: number,
  path: Float64Array | undefined,
): void {
  const { microns } = film
  const { friction, slipFactor, carriedFilmShare } = ball
  const hookFriction = friction.dryFriction * HOOK_SHARE_OF_DRY_FRICTION
  // The engine looks a module's constant up anew at each use, but not a function's.
  const state = together
  const slipping = stillSlipping
  const rowMetres = FILM_ROW_METRES
  const boards = FILM_BOARDS
  const lastRow = FILM_ROWS - 1
  const lastPlace = FILM_BOARDS - 1
  const lastPair = FILM_BOARDS - 2
  const boardsPerMetre = 1 / BOARD_WIDTH_METRES
  const laneWidth = LANE_WIDTH_METRES
  const gravity = STANDARD_GRAVITY
  const matching = MATCHING_PER_PLACE
  const pins = PINS_PLACE
  const never = Number.POSITIVE_INFINITY

  let place = startPlace
  let count = startCount
  while (place < pins && count > 0) {
    const whole = Math.ceil(place)
    const next = whole === place ? Math.min(whole + steps[whole]!, pins) : whole
    const length = next - place
    const half = 0.5 * length
    const sixth = length / 6
    const rowB = (place + half) | 0
    const shareB = rowB === lastRow ? 0 : place + half - rowB
    const firstB = rowB * boards
    const rowC = (place + length) | 0
    const shareC = rowC === lastRow ? 0 : place + length - rowC
    const firstC = rowC * boards
    let slippingOn = 0
    for (let k = 0; k < count; k++) {
      const at = slipping[k]!
      const lossA0 = state[at + Of.loss]!
      const lateralA = state[at + Of.lateral]!
      const carriedA0 = state[at + Of.carried]!
      const lossA = state[at + Of.lossSlope]!
      const slopeA = state[at + Of.lateralSlope]!
      const carriedA = state[at + Of.carriedSlope]!
      const slip = state[at + Of.startSlip]!
      const alongX = state[at + Of.startX]!
      const alongY = state[at + Of.startY]!
      const towardsX = state[at + Of.slipX]!
      const towardsY = state[at + Of.slipY]!

      const lossB0 = lossA0 + half * lossA
      // The clamp of filmUnderBall, written out: moved into filmBetween, throws rolled together took a third longer.
      const acrossB = (lateralA + half * slopeA) * boardsPerMetre - 0.5
      const placeB = Math.max(0, Math.min(lastPlace, acrossB))
      const boardB = Math.min(placeB | 0, lastPair)
      const bareB = filmBetween(microns, firstB + boardB, boards, placeB - boardB, shareB)
      const carriedB0 = carriedA0 + half * carriedA
      const slipB = slip - slipFactor * lossB0
      const coefficientB = frictionCoefficient(friction, bareB + carriedFilmShare * carriedB0, Math.max(0, slipB))
      const paceB = rowMetres / (alongX - towardsX * lossB0)
      const lossB = coefficientB * gravity * paceB
      const slopeB = (alongY - towardsY * lossB0) * paceB
      const carriedB = (bareB - carriedB0) * matching

      const lossC0 = lossA0 + length * (2 * lossB - lossA)
      const acrossC = (lateralA + length * (2 * slopeB - slopeA)) * boardsPerMetre - 0.5
      const placeC = Math.max(0, Math.min(lastPlace, acrossC))
      const boardC = Math.min(placeC | 0, lastPair)
      const bareC = filmBetween(microns, firstC + boardC, boards, placeC - boardC, shareC)
      const carriedC0 = carriedA0 + length * (2 * carriedB - carriedA)
      const slipC = slip - slipFactor * lossC0
      const coefficientC = frictionCoefficient(friction, bareC + carriedFilmShare * carriedC0, Math.max(0, slipC))
      const paceC0 = rowMetres / (alongX - towardsX * lossC0)
      const lossC = coefficientC * gravity * paceC0
      const carriedC = (bareC - carriedC0) * matching

      let nextLoss = lossA0 + sixth * (lossA + 4 * lossB + lossC)
      const lossAtMiddle = 0.5 * (lossA0 + nextLoss) + 0.125 * length * (lossA - lossC)
      const turn = state[at + Of.slipXPerRow]!
      let paceM = paceB + turn * (lossAtMiddle - lossB0) * paceB * paceB
      let slopeM = (alongY - towardsY * lossAtMiddle) * paceM
      let paceC = paceC0 + turn * (nextLoss - lossC0) * paceC0 * paceC0
      let slopeC = (alongY - towardsY * nextLoss) * paceC
      if (coefficientC >= hookFriction && state[at + Of.hookPlace] === never) {
        const coefficientA = state[at + Of.coefficient]!
        state[at + Of.hookPlace] = place + (length * (hookFriction - coefficientA)) / (coefficientC - coefficientA)
      }
      let passed = length
      let passedSixth = sixth
      if (nextLoss >= state[at + Of.lossAtRoll]!) {
        const missing = state[at + Of.lossAtRoll]! - lossA0
        const gain = nextLoss - lossA0
        const end = rollShare(length * lossA, gain, missing)
        const lossHalfway = lossA0 + 0.5 * end * (length * lossA + 0.5 * end * (gain - length * lossA))
        passed = length * end
        passedSixth = passed / 6
        nextLoss = state[at + Of.lossAtRoll]!
        paceM = rowMetres / (alongX - towardsX * lossHalfway)
        slopeM = (alongY - towardsY * lossHalfway) * paceM
        paceC = rowMetres / (alongX - towardsX * nextLoss)
        slopeC = state[at + Of.rollSlope]!
        state[at + Of.rollPlace] = place + passed
      } else slipping[slippingOn++] = at
      const nextLateral = lateralA + passedSixth * (slopeA + 4 * slopeM + slopeC)
      state[at + Of.time]! += passedSixth * (state[at + Of.pace]! + 4 * paceM + paceC)
      if (slopeA < 0 && slopeC >= 0) {
        const share = slopeA / (slopeA - slopeC)
        state[at + Of.breakpoint] = place + share * passed
        state[at + Of.breakpointLateral] = lateralA + 0.5 * share * passed * slopeA
      }
      if ((nextLateral < 0 || nextLateral > laneWidth) && state[at + Of.leftPlace] === never) {
        const edge = nextLateral < 0 ? 0 : laneWidth
        state[at + Of.leftPlace] = place + (passed * (edge - lateralA)) / (nextLateral - lateralA)
      }
      if (path !== undefined) writeRowsPassed(path, place, passed, lateralA, slopeA, nextLateral, slopeC)
      state[at + Of.loss] = nextLoss
      state[at + Of.lateral] = nextLateral
      state[at + Of.carried] = carriedA0 + sixth * (carriedA + 4 * carriedB + carriedC)
      state[at + Of.coefficient] = coefficientC
      state[at + Of.pace] = paceC
      state[at + Of.lossSlope] = coefficientC * gravity * paceC
      state[at + Of.lateralSlope] = slopeC
      state[at + Of.carriedSlope] = carriedC
    }
    count = slippingOn
    place = next
  }
}

/** Takes a ball straight on from where its slip ended to the pins, and writes what came of it. */
function rollOn(at: number, { slipFactor }: BallDynamics, out: RollOutcome, path: Float64Array | undefined): void {
  const rollPlace = together[at + Of.rollPlace]!
  const rolls = rollPlace !== Number.POSITIVE_INFINITY
  const place = rolls ? rollPlace : PINS_PLACE
  const lateral = together[at + Of.lateral]!
  const slope = together[at + Of.lateralSlope]!
  const remaining = PINS_PLACE - place
  const atPins = lateral + remaining * slope
  if (path !== undefined && remaining > 0) writeRowsPassed(path, place, remaining, lateral, slope, atPins, slope)
  let leftPlace = together[at + Of.leftPlace]!
  if (leftPlace === Number.POSITIVE_INFINITY && (atPins < 0 || atPins > LANE_WIDTH_METRES)) {
    leftPlace = place + ((atPins < 0 ? 0 : LANE_WIDTH_METRES) - lateral) / slope
  }
  let breakpoint = together[at + Of.breakpoint]!
  let breakpointLateral = together[at + Of.breakpointLateral]!
  if (atPins < breakpointLateral) {
    breakpoint = PINS_PLACE
    breakpointLateral = atPins
  }
  if (breakpointLateral < 0 && breakpoint < leftPlace) leftPlace = breakpoint
  if (path !== undefined && leftPlace < FILM_ROWS) path.fill(Number.NaN, Math.max(0, Math.floor(leftPlace) + 1))

  const loss = together[at + Of.loss]!
  const velocityX = together[at + Of.startX]! - together[at + Of.slipX] * loss
  const velocityY = together[at + Of.startY]! - together[at + Of.slipY] * loss
  out.lateralAtPinsMetres = atPins
  out.tangentAtPins = slope / FILM_ROW_METRES
  out.speedAtPinsMetresPerSecond = Math.sqrt(velocityX * velocityX + velocityY * velocityY)
  out.timeToPinsSeconds = together[at + Of.time]! + remaining * together[at + Of.pace]!
  out.slipAtPins = rolls ? 0 : Math.max(0, together[at + Of.startSlip] - slipFactor * loss)
  out.hookStartMetres = (together[at + Of.hookPlace]! + 0.5) * FILM_ROW_METRES
  out.rollStartMetres = (rollPlace + 0.5) * FILM_ROW_METRES
  out.breakpointMetres = (breakpoint + 0.5) * FILM_ROW_METRES
  out.breakpointLateralMetres = breakpointLateral
  out.leftLaneMetres = (leftPlace + 0.5) * FILM_ROW_METRES
}

/** Share of a step at which the parabola with the given first slope and whole gain has gained `missing`. */
function rollShare(slope: number, gain: number, missing: number): number {
  return (2 * missing) / (slope + Math.sqrt(slope * slope + 4 * (gain - slope) * missing))
}
