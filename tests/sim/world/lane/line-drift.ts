import { cosine, sine } from '../../../../src/sim/exact-math.js'
import { drawNormal, stream } from '../../../../src/sim/random.js'
import {
  boardToMetres,
  degreesToRadians,
  feetToMetres,
  metresToBoard,
  mphToMetresPerSecond,
  rpmToRadiansPerSecond,
} from '../../../../src/sim/units.js'
import { type BallDynamics, dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { type Launch, newRollOutcome, rollBall } from '../../../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { FILM_ROWS, type OilFilm } from '../../../../src/sim/world/lane/film.js'
import { layPattern, type OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { freshLane, type LaneState, wearLane } from '../../../../src/sim/world/lane/wear.js'

/** A first ball in the trade's units; the line runs from the laydown at the foul line to the target at 15 ft. */
export interface Shot {
  readonly laydownBoard: number
  readonly targetBoard: number
  readonly mph: number
  readonly rpm: number
  readonly rotationDegrees: number
}

export const USUAL = { mph: 17.5, rpm: 350, rotationDegrees: 52 } as const
const TILT_DEGREES = 12
const LOFT_FEET = 1.5

/** Standard deviations of a good club bowler's release (chosen; no published set). */
const ERROR = { laydownBoards: 0.35, angleDegrees: 0.25, mph: 0.35, rpm: 14, rotationDegrees: 2.5 } as const
/** Other bowlers do not stand on exactly the same board. */
const LINE_SPREAD_BOARDS = 0.7
const BOARDS_AT_ARROWS_PER_DEGREE = 2.95

export function launchOf(shot: Shot): Launch {
  const aside = boardToMetres(shot.targetBoard) - boardToMetres(shot.laydownBoard)
  const along = feetToMetres(15)
  const length = Math.sqrt(aside * aside + along * along)
  const rotation = degreesToRadians(shot.rotationDegrees)
  const tilt = degreesToRadians(TILT_DEGREES)
  return {
    startMetres: feetToMetres(LOFT_FEET),
    lateralMetres: boardToMetres(shot.laydownBoard) + (aside * LOFT_FEET) / 15,
    directionX: along / length,
    directionY: aside / length,
    speedMetresPerSecond: mphToMetresPerSecond(shot.mph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(shot.rpm),
    sineRotation: sine(rotation),
    cosineRotation: cosine(rotation),
    sineTilt: sine(tilt),
    cosineTilt: cosine(tilt),
  }
}

/** Rolls shots over one film. */
export function roller(film: OilFilm) {
  const steps = buildStepTable(film)
  const outcome = newRollOutcome()
  return (ball: BallDynamics, shot: Shot, path?: Float64Array) => {
    rollBall(film, steps, ball, launchOf(shot), outcome, path)
    return outcome
  }
}

/** Board at the headpin's row; NaN for a gutter ball. */
export function entryBoard(film: OilFilm, ball: BallDynamics, shot: Shot): number {
  const outcome = roller(film)(ball, shot)
  return outcome.leftLaneMetres < feetToMetres(60) ? Number.NaN : metresToBoard(outcome.lateralAtPinsMetres)
}

/**
 * The laydown that brings a ball over a target to the pocket, or one `moved` from a known line: the target moves
 * `targetShare` of the laydown's move. NaN when no line on the lane does.
 */
export function laydownForPocket(film: OilFilm, ball: BallDynamics, from: Shot, targetShare: number): number {
  let best = Number.NaN
  let bestMiss = 0.25
  for (let tenths = -120; tenths <= 160; tenths++) {
    const move = tenths / 10
    const shot = { ...from, laydownBoard: from.laydownBoard + move, targetBoard: from.targetBoard + targetShare * move }
    if (shot.laydownBoard < 3 || shot.laydownBoard > 37) continue
    const miss = Math.abs(entryBoard(film, ball, shot) - 17.5) + 0.005 * Math.abs(move)
    if (miss < bestMiss) {
      bestMiss = miss
      best = shot.laydownBoard
    }
  }
  return best
}

/** Plays balls in turn, each from its own laydown over one target, with release error and spread between bowlers. */
export function playShots(
  pattern: OilPattern,
  balls: readonly BallSpecification[],
  targetBoard: number,
  count: number,
  seed: string,
): readonly LaneState[] {
  const random = stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })
  const fresh = freshLane(layPattern(pattern))
  const field = balls.map((specification) => {
    const ball = dynamicsOf(specification)
    const from = { ...USUAL, laydownBoard: targetBoard + 5, targetBoard }
    return { ball, shot: { ...from, laydownBoard: laydownForPocket(fresh.film, ball, from, 0) } }
  })
  const lanes = [fresh]
  const path = new Float64Array(FILM_ROWS)
  for (let thrown = 0; thrown < count; thrown++) {
    const lane = lanes[thrown]!
    const { ball, shot } = field[thrown % field.length]!
    const aside = ERROR.laydownBoards * drawNormal(random) + LINE_SPREAD_BOARDS * drawNormal(random)
    const swing = ERROR.angleDegrees * BOARDS_AT_ARROWS_PER_DEGREE * drawNormal(random)
    roller(lane.film)(
      ball,
      {
        laydownBoard: shot.laydownBoard + aside,
        targetBoard: shot.targetBoard + aside + swing,
        mph: shot.mph + ERROR.mph * drawNormal(random),
        rpm: shot.rpm + ERROR.rpm * drawNormal(random),
        rotationDegrees: shot.rotationDegrees + ERROR.rotationDegrees * drawNormal(random),
      },
      path,
    )
    lanes.push(wearLane(lane, { path, coverUptake: ball.uptake, freshCoverShare: ball.freshCoverShare }))
  }
  return lanes
}
