import { cosine, sine } from '../../exact-math.js'
import { boardToMetres, feetToMetres } from '../../units.js'
import type { Launch } from '../ball/launch.js'
import type { BowlerProfile } from './profile.js'

/** The line a bowler means to play. Boards count from the bowler's own side. */
export interface Aim {
  /** Board on which the sliding foot ends. */
  readonly feetBoard: number
  /** Board to roll over at the arrows, 15 ft past the foul line. */
  readonly targetBoard: number
  /** Softer, usual or firmer. */
  readonly speedStep: -1 | 0 | 1
}

export type ReleaseKind = 'strike' | 'spare'

/** A launch to be filled again and again, so that many throws allocate nothing. */
export type ScratchLaunch = { -readonly [Key in keyof Launch]: Launch[Key] }

export const ARROWS_METRES = feetToMetres(15)
const NO_MISS: readonly number[] = [0, 0, 0, 0, 0]

/** A blank launch to be filled by deliverInto. */
export function scratchLaunch(): ScratchLaunch {
  return {
    startMetres: 0,
    lateralMetres: 0,
    directionX: 1,
    directionY: 0,
    speedMetresPerSecond: 0,
    spinRadiansPerSecond: 0,
    sineRotation: 0,
    cosineRotation: 1,
    sineTilt: 0,
    cosineTilt: 1,
  }
}

/** Where the ball's line crosses the foul line, in metres from the bowler's own edge: the slide foot's board less the slide. */
export function laydownMetresOf(profile: BowlerProfile, aim: Aim): number {
  return boardToMetres(aim.feetBoard) - profile.slideToLaydownMetres
}

/** Place of a rolled path at the arrows, halfway between the middles of two film rows; NaN where a gutter had the ball by then. */
export function pathAtArrows(path: Float64Array): number {
  return (path[29] + path[30]) / 2
}

/** Where the straight line of a launch crosses the arrows, in metres from the right edge. */
export function straightToArrows(launch: Launch): number {
  return launch.lateralMetres + (launch.directionY / launch.directionX) * (ARROWS_METRES - launch.startMetres)
}

/** A throw as it is meant, with how far each part of it spreads: all that its deliveries have in common. */
export interface MeantThrow {
  readonly touchdownMetres: number
  readonly laydownMetres: number
  /** Unit vector of the line from the laydown to the target. */
  readonly alongX: number
  readonly alongY: number
  readonly speedMetresPerSecond: number
  readonly spinRadiansPerSecond: number
  readonly rotationRadians: number
  readonly sineTilt: number
  readonly cosineTilt: number
  readonly lateralSpread: number
  readonly angleSpread: number
  readonly speedSpread: number
  readonly spinSpread: number
  readonly rotationSpread: number
  /** What angle has of the laydown's miss and of its own, spin of the speed's and of its own: two independent normals correlated. */
  readonly angleWithLaydown: number
  readonly angleAlone: number
  readonly spinWithSpeed: number
  readonly spinAlone: number
}

/** What a bowler who aims so means to do. */
export function meantThrow(profile: BowlerProfile, aim: Aim, kind: ReleaseKind): MeantThrow {
  const release = kind === 'strike' ? profile.strike : profile.spare
  const error = kind === 'strike' ? profile.error : profile.spareError
  const scale = aim.speedStep === 0 ? 1 : profile.offNormalErrorFactor
  const laydownMetres = laydownMetresOf(profile, aim)
  const swing = boardToMetres(aim.targetBoard) - laydownMetres
  const length = Math.sqrt(ARROWS_METRES * ARROWS_METRES + swing * swing)
  const { lateralAngleCorrelation, speedSpinCorrelation } = error
  return {
    touchdownMetres: release.loftMetres,
    laydownMetres,
    alongX: ARROWS_METRES / length,
    alongY: swing / length,
    speedMetresPerSecond: release.speedMetresPerSecond + aim.speedStep * profile.speedStepMetresPerSecond,
    spinRadiansPerSecond: release.spinRadiansPerSecond,
    rotationRadians: release.rotationRadians,
    sineTilt: sine(release.tiltRadians),
    cosineTilt: cosine(release.tiltRadians),
    lateralSpread: scale * error.lateralMetres,
    angleSpread: scale * error.angleRadians,
    speedSpread: scale * error.speedMetresPerSecond,
    spinSpread: scale * error.spinRadiansPerSecond,
    rotationSpread: scale * error.rotationRadians,
    angleWithLaydown: lateralAngleCorrelation,
    angleAlone: Math.sqrt(1 - lateralAngleCorrelation * lateralAngleCorrelation),
    spinWithSpeed: speedSpinCorrelation,
    spinAlone: Math.sqrt(1 - speedSpinCorrelation * speedSpinCorrelation),
  }
}

/**
 * Fills `launch` with one throw as it comes out of the hand. The ball travels the straight line from the laydown at the
 * foul line over the target at the arrows, moved sideways by the laydown's miss and turned about its foul-line end by
 * the angle's; it meets the lane where that line reaches the touchdown. A launch is always a right-hander's: for a
 * left-hander it is the lane that is mirrored.
 *
 * @param normals five independent standard normal numbers from `from` on: laydown, angle, speed, spin, rotation
 */
export function deliverInto(launch: ScratchLaunch, meant: MeantThrow, normals: ArrayLike<number>, from = 0): void {
  const laydownMiss = normals[from]
  const speedMiss = normals[from + 2]
  const { alongX, alongY, touchdownMetres } = meant
  const turn = meant.angleSpread * (meant.angleWithLaydown * laydownMiss + meant.angleAlone * normals[from + 1])
  const sineTurn = sine(turn)
  const cosineTurn = cosine(turn)
  const laydown = meant.laydownMetres + meant.lateralSpread * laydownMiss
  const rotation = meant.rotationRadians + meant.rotationSpread * normals[from + 4]

  launch.startMetres = touchdownMetres
  launch.directionX = alongX * cosineTurn - alongY * sineTurn
  launch.directionY = alongY * cosineTurn + alongX * sineTurn
  launch.lateralMetres = laydown + (launch.directionY / launch.directionX) * touchdownMetres
  launch.speedMetresPerSecond = meant.speedMetresPerSecond + meant.speedSpread * speedMiss
  launch.spinRadiansPerSecond =
    meant.spinRadiansPerSecond +
    meant.spinSpread * (meant.spinWithSpeed * speedMiss + meant.spinAlone * normals[from + 3])
  launch.sineRotation = sine(rotation)
  launch.cosineRotation = cosine(rotation)
  launch.sineTilt = meant.sineTilt
  launch.cosineTilt = meant.cosineTilt
}

/** The throw as it comes out of the hand, as a launch of its own; see deliverInto. */
export function deliveredLaunch(
  profile: BowlerProfile,
  aim: Aim,
  kind: ReleaseKind,
  normals: readonly number[],
): Launch {
  const launch = scratchLaunch()
  deliverInto(launch, meantThrow(profile, aim, kind), normals)
  return launch
}

/** The throw as meant: a delivery without misses. */
export function intendedLaunch(profile: BowlerProfile, aim: Aim, kind: ReleaseKind): Launch {
  return deliveredLaunch(profile, aim, kind, NO_MISS)
}
