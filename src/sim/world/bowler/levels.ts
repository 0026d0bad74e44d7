import {
  BOARD_WIDTH_METRES,
  boardsToMetres,
  degreesToRadians,
  inchesToMetres,
  mphToMetresPerSecond,
  rpmToRadiansPerSecond,
} from '../../units.js'
import type { BowlerProfile, ErrorSpread, Hand, ReleaseNumbers } from './profile.js'
import { ARROWS_METRES } from './release.js'

export const LEVELS = ['elite', '220', '200', '180', '160', 'recreational'] as const
export type Level = (typeof LEVELS)[number]

export const STYLES = ['stroker', 'tweener', 'cranker', 'two-handed'] as const
export type Style = (typeof STYLES)[number]

/** Mean range of ten standard normal numbers (order statistics): turns a ten-shot spread into a standard deviation. */
const TEN_SHOT_RANGE_SIGMAS = 3.078

interface LevelFigures {
  readonly words: string
  /**
   * Left-right spread of ten shots at the arrows, from the governing body's coaching magazine, July 2012; the elite
   * figure is an upper bound. None is printed for recreational bowlers: 4.5 boards is chosen for the strikes of a published
   * league team (27 %).
   */
  readonly tenShotSpreadMetres: number
  /** Common practice, no source: 0.2-0.3 mph for elite bowlers, 0.5-1 mph in clubs. */
  readonly speedSpreadMph: number
  /** Common practice, no source. */
  readonly spinSpreadRpm: number
  /** Common practice, no source. */
  readonly rotationSpreadDegrees: number
  /** Taken off the style's elite speed; common practice, no source. */
  readonly slowerMph: number
  /** Share of the style's spin; a style's spin is what names it, so only the untrained have less. */
  readonly spinShare: number
  /**
   * Aiming scatter of the spare ball as a share of the strike ball's: chosen for the single pins that elite men clear on
   * television (96 %) and for what the same league team clears of nine-counts (about 50 %), whose spares are no calmer.
   */
  readonly spareAimShare: number
}

const figures = (
  words: string,
  tenShotSpreadMetres: number,
  speedSpreadMph: number,
  spinSpreadRpm: number,
  rotationSpreadDegrees: number,
  slowerMph: number,
  spinShare = 1,
  spareAimShare = 0.98,
): LevelFigures => ({
  words,
  tenShotSpreadMetres,
  speedSpreadMph,
  spinSpreadRpm,
  rotationSpreadDegrees,
  slowerMph,
  spinShare,
  spareAimShare,
})

const LEVEL_FIGURES: Readonly<Record<Level, LevelFigures>> = {
  elite: figures('Elite', inchesToMetres(1.5), 0.3, 14, 3, 0),
  '220': figures('220-average', boardsToMetres(2), 0.35, 14, 3, 0.4),
  '200': figures('200-average', boardsToMetres(3), 0.5, 16, 3.5, 0.8),
  '180': figures('180-average', boardsToMetres(4), 0.65, 20, 4, 1.2),
  '160': figures('160-average', boardsToMetres(4.5), 0.8, 25, 5, 1.7),
  recreational: figures('Recreational', boardsToMetres(4.5), 0.85, 20, 5, 3.5, 0.65, 1.35),
}

interface StyleFigures {
  readonly spinRpm: number
  readonly eliteSpeedMph: number
  readonly rotationDegrees: number
  readonly tiltDegrees: number
  readonly loftMetres: number
  readonly slideBoards: number
}

/**
 * Spin by style: coaching pages put strokers at 250-350 rpm, those between at 300-400, crankers at 400 and more. Within
 * that, the stroker has the mean of 10 elite women on television (297 rpm, 17.83 mph) and the cranker that of 30 elite
 * men (436 rpm, 18.61 mph; newspaper tracking, September 2020). Rotation 30-60 degrees, tilt 5-20 and least for
 * two-handers, touchdown 0.3-1 m past the line, slide foot 6-7 boards from the ball: common practice, no source.
 */
const STYLE_FIGURES: Readonly<Record<Style, StyleFigures>> = {
  stroker: {
    spinRpm: 297,
    eliteSpeedMph: 17.83,
    rotationDegrees: 40,
    tiltDegrees: 14,
    loftMetres: 0.35,
    slideBoards: 7,
  },
  tweener: {
    spinRpm: 355,
    eliteSpeedMph: 18.2,
    rotationDegrees: 50,
    tiltDegrees: 12,
    loftMetres: 0.45,
    slideBoards: 7,
  },
  cranker: {
    spinRpm: 436,
    eliteSpeedMph: 18.61,
    rotationDegrees: 55,
    tiltDegrees: 11,
    loftMetres: 0.6,
    slideBoards: 7,
  },
  'two-handed': {
    spinRpm: 460,
    eliteSpeedMph: 18.61,
    rotationDegrees: 45,
    tiltDegrees: 6,
    loftMetres: 0.6,
    slideBoards: 6,
  },
}

/**
 * Spare release: 200-250 rpm, 5-15 degrees of rotation, a little firmer; common practice, no source. Its release
 * scatters less than the strike ball's; common practice, no source.
 */
const SPARE = { spinRpm: 220, rotationDegrees: 10, firmerMph: 0.9, releaseShare: 0.8 } as const

/**
 * How the published scatter at the arrows divides: the laydown takes 0.6 of it, and the hand mends a little of what the
 * feet missed (correlation -0.3). That good bowlers hold the arrows steady while the laydown varies is reported by a
 * coaching article; the figures are common practice, no source.
 */
const LAYDOWN_SHARE = 0.6
const LAYDOWN_ANGLE_CORRELATION = -0.3
/** A faster swing turns the ball a little faster too; common practice, no source. */
const SPEED_SPIN_CORRELATION = 0.2

/** The angle's share a of the scatter at the arrows: l² + 2ρla + a² = 1 for the laydown's share l. */
const ANGLE_SHARE = (() => {
  const mended = LAYDOWN_ANGLE_CORRELATION * LAYDOWN_SHARE
  return -mended + Math.sqrt(mended * mended + 1 - LAYDOWN_SHARE * LAYDOWN_SHARE)
})()

const SPEED_STEP_MPH = 0.75
/**
 * Off the usual speed the ball comes off the hand less evenly, a quarter more in speed, spin and rotation, while the eye and the swing aim as
 * before; common practice, no source.
 */
const OFF_NORMAL_ERROR_FACTOR = 1.25

/** Spreads of a level, where it aims and how it releases, as shares of the strike ball's. */
function errorSpread(level: LevelFigures, aimShare: number, releaseShare: number): ErrorSpread {
  const arrowsMetres = (aimShare * level.tenShotSpreadMetres) / TEN_SHOT_RANGE_SIGMAS
  return {
    lateralMetres: LAYDOWN_SHARE * arrowsMetres,
    angleRadians: (ANGLE_SHARE * arrowsMetres) / ARROWS_METRES,
    speedMetresPerSecond: releaseShare * mphToMetresPerSecond(level.speedSpreadMph),
    spinRadiansPerSecond: releaseShare * rpmToRadiansPerSecond(level.spinSpreadRpm),
    rotationRadians: releaseShare * degreesToRadians(level.rotationSpreadDegrees),
    lateralAngleCorrelation: LAYDOWN_ANGLE_CORRELATION,
    speedSpinCorrelation: SPEED_SPIN_CORRELATION,
  }
}

/** A typical bowler of a level and style, with published scatter at the arrows where there is any. */
export function levelProfile(level: Level, style: Style = 'tweener', hand: Hand = 'right'): BowlerProfile {
  const skill = LEVEL_FIGURES[level]
  const manner = STYLE_FIGURES[style]
  const speedMph = manner.eliteSpeedMph - skill.slowerMph
  const spinRpm = manner.spinRpm * skill.spinShare
  const strike: ReleaseNumbers = {
    speedMetresPerSecond: mphToMetresPerSecond(speedMph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(spinRpm),
    rotationRadians: degreesToRadians(manner.rotationDegrees),
    tiltRadians: degreesToRadians(manner.tiltDegrees),
    loftMetres: manner.loftMetres,
  }
  const spare: ReleaseNumbers = {
    ...strike,
    speedMetresPerSecond: mphToMetresPerSecond(speedMph + SPARE.firmerMph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(Math.min(SPARE.spinRpm, spinRpm)),
    rotationRadians: degreesToRadians(SPARE.rotationDegrees),
  }
  return {
    id: `${level}-${style}-${hand}`,
    name: `${skill.words} ${style === 'two-handed' ? 'two-hander' : style}`,
    hand,
    level,
    strike,
    spare,
    error: errorSpread(skill, 1, 1),
    spareError: errorSpread(skill, skill.spareAimShare, SPARE.releaseShare),
    speedStepMetresPerSecond: mphToMetresPerSecond(SPEED_STEP_MPH),
    offNormalErrorFactor: OFF_NORMAL_ERROR_FACTOR,
    slideToLaydownMetres: manner.slideBoards * BOARD_WIDTH_METRES,
  }
}
