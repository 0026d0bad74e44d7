import type { Launch } from '../ball/launch.js'
import { cosine, sine } from '../exact-math.js'
import { boardToMetres, feetToMetres } from '../units.js'
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

/** A number that goes together with `first` as the correlation says, made from two independent standard normals. */
function together(correlation: number, first: number, own: number): number {
  return correlation * first + Math.sqrt(1 - correlation * correlation) * own
}

/**
 * Fills `launch` with one throw as it comes out of the hand. The ball travels the straight line from the laydown at the
 * foul line over the target at the arrows, moved sideways by the laydown's miss and turned about its foul-line end by
 * the angle's; it meets the lane where that line reaches the touchdown. A launch is always a right-hander's: for a
 * left-hander it is the lane that is mirrored.
 *
 * @param normals five independent standard normal numbers from `from` on: laydown, angle, speed, spin, rotation
 */
export function deliverInto(
  launch: ScratchLaunch,
  profile: BowlerProfile,
  aim: Aim,
  kind: ReleaseKind,
  normals: ArrayLike<number>,
  from = 0,
): void {
  const release = kind === 'strike' ? profile.strike : profile.spare
  const error = kind === 'strike' ? profile.error : profile.spareError
  const scale = aim.speedStep === 0 ? 1 : profile.offNormalErrorFactor
  const laydownMiss = normals[from]
  const speedMiss = normals[from + 2]

  const meantLaydown = laydownMetresOf(profile, aim)
  const swing = boardToMetres(aim.targetBoard) - meantLaydown
  const length = Math.sqrt(ARROWS_METRES * ARROWS_METRES + swing * swing)
  const alongX = ARROWS_METRES / length
  const alongY = swing / length
  const turn = scale * error.angleRadians * together(error.lateralAngleCorrelation, laydownMiss, normals[from + 1])
  const sineTurn = sine(turn)
  const cosineTurn = cosine(turn)
  const laydown = meantLaydown + scale * error.lateralMetres * laydownMiss
  const rotation = release.rotationRadians + scale * error.rotationRadians * normals[from + 4]

  launch.startMetres = release.loftMetres
  launch.directionX = alongX * cosineTurn - alongY * sineTurn
  launch.directionY = alongY * cosineTurn + alongX * sineTurn
  launch.lateralMetres = laydown + (launch.directionY / launch.directionX) * release.loftMetres
  launch.speedMetresPerSecond =
    release.speedMetresPerSecond +
    aim.speedStep * profile.speedStepMetresPerSecond +
    scale * error.speedMetresPerSecond * speedMiss
  launch.spinRadiansPerSecond =
    release.spinRadiansPerSecond +
    scale * error.spinRadiansPerSecond * together(error.speedSpinCorrelation, speedMiss, normals[from + 3])
  launch.sineRotation = sine(rotation)
  launch.cosineRotation = cosine(rotation)
  launch.sineTilt = sine(release.tiltRadians)
  launch.cosineTilt = cosine(release.tiltRadians)
}

/** The throw as it comes out of the hand, as a launch of its own; see deliverInto. */
export function deliveredLaunch(
  profile: BowlerProfile,
  aim: Aim,
  kind: ReleaseKind,
  normals: readonly number[],
): Launch {
  const launch = scratchLaunch()
  deliverInto(launch, profile, aim, kind, normals)
  return launch
}

/** The throw as meant: a delivery without misses. */
export function intendedLaunch(profile: BowlerProfile, aim: Aim, kind: ReleaseKind): Launch {
  return deliveredLaunch(profile, aim, kind, NO_MISS)
}
