import {
  feetToMetres,
  metresPerSecondToMph,
  metresToBoards,
  mphToMetresPerSecond,
  radiansPerSecondToRpm,
  radiansToDegrees,
} from '../../units.js'

export type Hand = 'right' | 'left'

/** How a ball leaves the hand when everything goes as meant. */
export interface ReleaseNumbers {
  readonly speedMetresPerSecond: number
  readonly spinRadiansPerSecond: number
  /** Axis rotation: 0 rolls end over end, 90 degrees spins square to the travel. */
  readonly rotationRadians: number
  readonly tiltRadians: number
  /** Where the ball meets the lane, past the foul line. */
  readonly loftMetres: number
}

/** Standard deviations of a bowler's misses from throw to throw, and how two pairs of them go together. */
export interface ErrorSpread {
  /** Laydown, the whole line moving sideways with it. */
  readonly lateralMetres: number
  readonly angleRadians: number
  readonly speedMetresPerSecond: number
  readonly spinRadiansPerSecond: number
  readonly rotationRadians: number
  /** Between laydown and angle, both counted to the left: below 0 when the hand mends what the feet missed. */
  readonly lateralAngleCorrelation: number
  readonly speedSpinCorrelation: number
}

export interface BowlerProfile {
  readonly id: string
  readonly name: string
  readonly hand: Hand
  /** A class of play, or the average in pins; `own` for figures of the bowler's own. */
  readonly level: 'elite' | '220' | '200' | '180' | '160' | 'recreational' | 'own'
  readonly strike: ReleaseNumbers
  /** The straighter, calmer release kept for spares. */
  readonly spare: ReleaseNumbers
  readonly error: ErrorSpread
  readonly spareError: ErrorSpread
  /** What softer takes off the usual speed and firmer adds. */
  readonly speedStepMetresPerSecond: number
  /** Factor on every spread for a throw one speed step off the usual. */
  readonly offNormalErrorFactor: number
  /** How far the sliding foot stands to the inside of the laydown. */
  readonly slideToLaydownMetres: number
}

/** Standard deviation of the ball's place on its first straight line, `metres` past the foul line. */
export function lateralSpreadAt(error: ErrorSpread, metres: number): number {
  const byAngle = error.angleRadians * metres
  const { lateralMetres, lateralAngleCorrelation } = error
  return Math.sqrt(lateralMetres * lateralMetres + byAngle * (byAngle + 2 * lateralAngleCorrelation * lateralMetres))
}

/** A normal number made from one 32-bit draw stays within this many standard deviations. */
const FARTHEST_DRAW_SIGMAS = 6.4

/** Most that a miss made of two correlated draws can be, in multiples of either; 1 for a correlation out of range. */
function bothDraws(correlation: number): number {
  const own = 1 - correlation * correlation
  return own > 0 ? Math.abs(correlation) + Math.sqrt(own) : 1
}

interface Limit {
  readonly what: string
  readonly found: number
  readonly low: number
  readonly high: number
  readonly unit: string
}

const written = (value: number): string => String(Math.round(value * 1000) / 1000)

function outside({ what, found, low, high, unit }: Limit): string[] {
  if (found >= low && found <= high) return []
  const shown = Number.isFinite(found) ? `${written(found)}${unit}` : String(found)
  return [`${what} is ${shown}, but must be from ${written(low)} to ${written(high)}${unit}.`]
}

function releaseLimits(kind: string, release: ReleaseNumbers): Limit[] {
  const mph = metresPerSecondToMph(release.speedMetresPerSecond)
  return [
    { what: `${kind} speed`, found: mph, low: 8, high: 28, unit: ' mph' },
    {
      what: `${kind} spin`,
      found: radiansPerSecondToRpm(release.spinRadiansPerSecond),
      low: 0,
      high: 700,
      unit: ' rpm',
    },
    { what: `${kind} axis rotation`, found: radiansToDegrees(release.rotationRadians), low: 0, high: 90, unit: '°' },
    { what: `${kind} axis tilt`, found: radiansToDegrees(release.tiltRadians), low: 0, high: 60, unit: '°' },
    { what: `${kind} touchdown`, found: release.loftMetres / feetToMetres(1), low: 0, high: 6, unit: ' ft' },
  ]
}

function errorLimits(kind: string, error: ErrorSpread, release: ReleaseNumbers, profile: BowlerProfile): Limit[] {
  const reach = FARTHEST_DRAW_SIGMAS * Math.max(1, profile.offNormalErrorFactor)
  // the farthest miss must still leave the ball rolling forward
  const softest = Math.max(0, release.speedMetresPerSecond - profile.speedStepMetresPerSecond - mphToMetresPerSecond(1))
  const mph = metresPerSecondToMph(error.speedMetresPerSecond)
  const rpm = radiansPerSecondToRpm(error.spinRadiansPerSecond)
  const leastSpin = radiansPerSecondToRpm(release.spinRadiansPerSecond)
  // the spin's miss is made of two draws, which may both be at their farthest
  const spinReach = reach * bothDraws(error.speedSpinCorrelation)
  return [
    { what: `${kind} laydown spread`, found: metresToBoards(error.lateralMetres), low: 0, high: 5, unit: ' boards' },
    { what: `${kind} angle spread`, found: radiansToDegrees(error.angleRadians), low: 0, high: 3, unit: '°' },
    { what: `${kind} speed spread`, found: mph, low: 0, high: metresPerSecondToMph(softest) / reach, unit: ' mph' },
    { what: `${kind} spin spread`, found: rpm, low: 0, high: leastSpin / spinReach, unit: ' rpm' },
    { what: `${kind} rotation spread`, found: radiansToDegrees(error.rotationRadians), low: 0, high: 30, unit: '°' },
    {
      what: `${kind} laydown-angle correlation`,
      found: error.lateralAngleCorrelation,
      low: -0.99,
      high: 0.99,
      unit: '',
    },
    { what: `${kind} speed-spin correlation`, found: error.speedSpinCorrelation, low: -0.99, high: 0.99, unit: '' },
  ]
}

/** What is wrong with a profile, one sentence a fault; empty when a bowler could throw so. */
export function checkProfile(profile: BowlerProfile): readonly string[] {
  const limits: Limit[] = [
    ...releaseLimits('Strike', profile.strike),
    ...releaseLimits('Spare', profile.spare),
    ...errorLimits('Strike', profile.error, profile.strike, profile),
    ...errorLimits('Spare', profile.spareError, profile.spare, profile),
    {
      what: 'Speed step',
      found: metresPerSecondToMph(profile.speedStepMetresPerSecond),
      low: 0.1,
      high: 4,
      unit: ' mph',
    },
    { what: 'Error factor off the usual speed', found: profile.offNormalErrorFactor, low: 1, high: 3, unit: '' },
    {
      what: 'Slide foot to laydown',
      found: metresToBoards(profile.slideToLaydownMetres),
      low: 0,
      high: 15,
      unit: ' boards',
    },
  ]
  return limits.flatMap(outside)
}
