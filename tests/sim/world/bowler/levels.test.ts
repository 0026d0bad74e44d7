import { max, mean, min, sampleCorrelation, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { drawNormal, stream } from '../../../../src/sim/random.js'
import {
  BOARD_WIDTH_METRES,
  metresPerSecondToMph,
  metresToInches,
  radiansPerSecondToRpm,
  radiansToDegrees,
} from '../../../../src/sim/units.js'
import type { Launch } from '../../../../src/sim/world/ball/launch.js'
import { LEVELS, type Level, levelProfile, STYLES } from '../../../../src/sim/world/bowler/levels.js'
import { checkProfile, lateralSpreadAt } from '../../../../src/sim/world/bowler/profile.js'
import { type Aim, ARROWS_METRES, deliveredLaunch, type ReleaseKind } from '../../../../src/sim/world/bowler/release.js'

const AIM: Aim = { feetBoard: 25, targetBoard: 12, speedStep: 0 }
const THROWS = 20_000

const atArrows = (launch: Launch): number =>
  launch.lateralMetres + ((ARROWS_METRES - launch.startMetres) * launch.directionY) / launch.directionX

function manyThrows(level: Level, aim: Aim = AIM, kind: ReleaseKind = 'strike'): Launch[] {
  const random = stream({ seed: 'bowler', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const profile = levelProfile(level)
  return Array.from({ length: THROWS }, () =>
    deliveredLaunch(
      profile,
      aim,
      kind,
      [0, 0, 0, 0, 0].map(() => drawNormal(random)),
    ),
  )
}

// Governing-body coaching magazine, July 2012: left-right spread of ten shots over paper at the arrows, by average
const PUBLISHED: readonly (readonly [Level, number, string])[] = [
  ['elite', 1.5, 'inches'],
  ['220', 2, 'boards'],
  ['200', 3, 'boards'],
  ['180', 4, 'boards'],
  ['160', 4.5, 'boards'],
]

const inUnit = (metres: number, unit: string): number =>
  unit === 'inches' ? metresToInches(metres) : metres / BOARD_WIDTH_METRES

describe('scatter at the arrows', () => {
  it.each(PUBLISHED)('%s: ten shots spread over %f %s, as published', (level, spread, unit) => {
    const places = manyThrows(level).map(atArrows)
    const spreads = Array.from({ length: THROWS / 10 }, (_, set) => {
      const ten = places.slice(10 * set, 10 * set + 10)
      return inUnit(max(ten) - min(ten), unit)
    })
    // standard error of the mean of 2000 ranges is 0.6 % of it (a range of ten has a spread of 26 %): 4 of them
    expect(Math.abs(mean(spreads) / spread - 1)).toBeLessThan(0.024)
    // and the standard deviation is spread / 3.078, the mean range of ten standard normals; 4 standard errors
    const sigma = inUnit(standardDeviation(places), unit)
    expect(Math.abs(sigma / (spread / 3.078) - 1)).toBeLessThan(4 / Math.sqrt(2 * THROWS))
    expect(inUnit(lateralSpreadAt(levelProfile(level).error, ARROWS_METRES), unit)).toBeCloseTo(spread / 3.078, 9)
    expect(Math.abs(mean(places) / BOARD_WIDTH_METRES + 0.5 - AIM.targetBoard)).toBeLessThan((4 * spread) / 3.078 / 141)
  })

  it('grows from level to level', () => {
    const sigmas = LEVELS.map((level) => standardDeviation(manyThrows(level).map(atArrows)))
    expect(sigmas).toEqual([...sigmas].sort((a, b) => a - b))
  })

  it('is a quarter wider in everything off the usual speed, softer or firmer alike', () => {
    const usual = manyThrows('200')
    for (const speedStep of [-1, 1] as const) {
      const off = manyThrows('200', { ...AIM, speedStep })
      const columns: ((launch: Launch) => number)[] = [
        atArrows,
        (launch) => launch.speedMetresPerSecond,
        (launch) => launch.spinRadiansPerSecond,
        (launch) => Math.atan2(launch.sineRotation, launch.cosineRotation),
      ]
      // the same draws for both, so in proportion but for the tangent of the turned line
      for (const column of columns)
        expect(standardDeviation(off.map(column)) / standardDeviation(usual.map(column))).toBeCloseTo(1.25, 3)
    }
  })

  it('is smaller for spares', () => {
    const strike = standardDeviation(manyThrows('180').map(atArrows))
    const spare = standardDeviation(manyThrows('180', AIM, 'spare').map(atArrows))
    expect(spare).toBeLessThan(strike)
  })
})

describe('the profile of a level', () => {
  it.each(LEVELS)('%s delivers speed, spin and rotation with the spread and correlations it states', (level) => {
    const profile = levelProfile(level)
    const throws = manyThrows(level)
    const speeds = throws.map((launch) => launch.speedMetresPerSecond)
    const spins = throws.map((launch) => launch.spinRadiansPerSecond)
    const rotations = throws.map((launch) => Math.atan2(launch.sineRotation, launch.cosineRotation))
    const within = 4 / Math.sqrt(2 * THROWS)
    expect(Math.abs(standardDeviation(speeds) / profile.error.speedMetresPerSecond - 1)).toBeLessThan(within)
    expect(Math.abs(standardDeviation(spins) / profile.error.spinRadiansPerSecond - 1)).toBeLessThan(within)
    expect(Math.abs(standardDeviation(rotations) / profile.error.rotationRadians - 1)).toBeLessThan(within)
    expect(Math.abs(sampleCorrelation(speeds, spins) - profile.error.speedSpinCorrelation)).toBeLessThan(
      4 / Math.sqrt(THROWS),
    )
    const angles = throws.map((launch) => Math.atan2(launch.directionY, launch.directionX))
    const laydowns = throws.map((l) => l.lateralMetres - (l.startMetres * l.directionY) / l.directionX)
    expect(Math.abs(standardDeviation(angles) / profile.error.angleRadians - 1)).toBeLessThan(within)
    expect(Math.abs(standardDeviation(laydowns) / profile.error.lateralMetres - 1)).toBeLessThan(within)
    expect(Math.abs(sampleCorrelation(laydowns, angles) - profile.error.lateralAngleCorrelation)).toBeLessThan(
      4 / Math.sqrt(THROWS),
    )
  })

  it('has the published means of elite bowlers', () => {
    // newspaper tracking of televised finals, September 2020: 30 men 436 rpm, 18.61 mph; 10 women 297 rpm, 17.83 mph
    const men = levelProfile('elite', 'cranker').strike
    const women = levelProfile('elite', 'stroker').strike
    expect(radiansPerSecondToRpm(men.spinRadiansPerSecond)).toBeCloseTo(436, 9)
    expect(metresPerSecondToMph(men.speedMetresPerSecond)).toBeCloseTo(18.61, 9)
    expect(radiansPerSecondToRpm(women.spinRadiansPerSecond)).toBeCloseTo(297, 9)
    expect(metresPerSecondToMph(women.speedMetresPerSecond)).toBeCloseTo(17.83, 9)
  })

  it.each([
    // coaching pages: strokers 250-350 rpm, those between 300-400, crankers 400 and more
    ['stroker', 250, 350],
    ['tweener', 300, 400],
    ['cranker', 400, 600],
  ] as const)('keeps a %s between %i and %i rpm at every level with an average', (style, low, high) => {
    for (const level of LEVELS.filter((one) => one !== 'recreational')) {
      const rpm = radiansPerSecondToRpm(levelProfile(level, style).strike.spinRadiansPerSecond)
      expect(rpm).toBeGreaterThanOrEqual(low)
      expect(rpm).toBeLessThanOrEqual(high)
    }
  })

  it('keeps the speed spread within what is common practice, no source: elite 0.2-0.3 mph, clubs 0.5-1', () => {
    const spreadMph = (level: Level) => metresPerSecondToMph(levelProfile(level).error.speedMetresPerSecond)
    expect(spreadMph('elite')).toBeGreaterThanOrEqual(0.2)
    expect(spreadMph('elite')).toBeLessThanOrEqual(0.3)
    for (const level of ['200', '180', '160'] as const) {
      expect(spreadMph(level)).toBeGreaterThanOrEqual(0.5)
      expect(spreadMph(level)).toBeLessThanOrEqual(1)
    }
  })

  it('throws straighter, calmer balls at spares and is sound for every level, style and hand', () => {
    for (const level of LEVELS)
      for (const style of STYLES)
        for (const hand of ['right', 'left'] as const) {
          const profile = levelProfile(level, style, hand)
          expect(checkProfile(profile)).toEqual([])
          expect(profile.spare.spinRadiansPerSecond).toBeLessThanOrEqual(profile.strike.spinRadiansPerSecond)
          const rotation = radiansToDegrees(profile.spare.rotationRadians)
          expect(rotation).toBeGreaterThanOrEqual(5)
          expect(rotation).toBeLessThanOrEqual(15)
          expect(profile.spareError.rotationRadians).toBeLessThan(profile.error.rotationRadians)
          if (level !== 'recreational') expect(profile.spareError.angleRadians).toBeLessThan(profile.error.angleRadians)
        }
  })
})
