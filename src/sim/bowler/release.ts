import type { Launch } from '../ball/launch.js'
import { cosine, sine } from '../exact-math.js'
import { boardToMetres, feetToMetres } from '../units.js'
import type { BowlerProfile, ErrorSpread, ReleaseNumbers } from './profile.js'

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

export const ARROWS_METRES = feetToMetres(15)
const NO_MISS: readonly number[] = [0, 0, 0, 0, 0]

/** Where the ball's line crosses the foul line, in metres from the bowler's own edge: the slide foot's board less the slide. */
export function laydownMetresOf(profile: BowlerProfile, aim: Aim): number {
  return boardToMetres(aim.feetBoard) - profile.slideToLaydownMetres
}

/**
 * A launch on the straight line that crosses the foul line at `laydownMetres` and the arrows `swingMetres` further left,
 * turned left by `turnRadians` about its foul-line end. The ball meets the lane where that line reaches the touchdown.
 */
export function launchFrom(
  release: ReleaseNumbers,
  laydownMetres: number,
  swingMetres: number,
  turnRadians = 0,
): Launch {
  const length = Math.sqrt(ARROWS_METRES * ARROWS_METRES + swingMetres * swingMetres)
  const alongX = ARROWS_METRES / length
  const alongY = swingMetres / length
  const sineTurn = sine(turnRadians)
  const cosineTurn = cosine(turnRadians)
  const directionX = alongX * cosineTurn - alongY * sineTurn
  const directionY = alongY * cosineTurn + alongX * sineTurn
  return {
    startMetres: release.loftMetres,
    lateralMetres: laydownMetres + (directionY / directionX) * release.loftMetres,
    directionX,
    directionY,
    speedMetresPerSecond: release.speedMetresPerSecond,
    spinRadiansPerSecond: release.spinRadiansPerSecond,
    sineRotation: sine(release.rotationRadians),
    cosineRotation: cosine(release.rotationRadians),
    sineTilt: sine(release.tiltRadians),
    cosineTilt: cosine(release.tiltRadians),
  }
}

/** A number that goes together with `first` as the correlation says, made from two independent standard normals. */
const together = (correlation: number, first: number, own: number): number =>
  correlation * first + Math.sqrt(1 - correlation * correlation) * own

function missScale(profile: BowlerProfile, speedStep: Aim['speedStep']): number {
  return speedStep === 0 ? 1 : profile.offNormalErrorFactor
}

/** The throw as meant. A launch is always a right-hander's: for a left-hander it is the lane that is mirrored. */
export function intendedLaunch(profile: BowlerProfile, aim: Aim, kind: ReleaseKind): Launch {
  return deliveredLaunch(profile, aim, kind, NO_MISS)
}

/**
 * The throw as it comes out of the hand.
 *
 * @param normals five independent standard normal numbers: laydown, angle, speed, spin, rotation; all zero gives the
 *   intended launch to the last bit
 */
export function deliveredLaunch(
  profile: BowlerProfile,
  aim: Aim,
  kind: ReleaseKind,
  normals: readonly number[],
): Launch {
  const release: ReleaseNumbers = profile[kind]
  const error: ErrorSpread = kind === 'strike' ? profile.error : profile.spareError
  const scale = missScale(profile, aim.speedStep)
  const [laydown, angle, speed, spin, rotation] = normals
  const laydownMetres = laydownMetresOf(profile, aim)
  const swingMetres = boardToMetres(aim.targetBoard) - laydownMetres
  const delivered: ReleaseNumbers = {
    speedMetresPerSecond:
      release.speedMetresPerSecond +
      aim.speedStep * profile.speedStepMetresPerSecond +
      scale * error.speedMetresPerSecond * speed,
    spinRadiansPerSecond:
      release.spinRadiansPerSecond +
      scale * error.spinRadiansPerSecond * together(error.speedSpinCorrelation, speed, spin),
    rotationRadians: release.rotationRadians + scale * error.rotationRadians * rotation,
    tiltRadians: release.tiltRadians,
    loftMetres: release.loftMetres,
  }
  return launchFrom(
    delivered,
    laydownMetres + scale * error.lateralMetres * laydown,
    swingMetres,
    scale * error.angleRadians * together(error.lateralAngleCorrelation, laydown, angle),
  )
}
