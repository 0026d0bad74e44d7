import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  boardToMetres,
  degreesToRadians,
  feetToMetres,
  metresToBoard,
  metresToBoards,
  mphToMetresPerSecond,
} from '../../../../src/sim/units.js'
import { LEVELS, levelProfile, STYLES } from '../../../../src/sim/world/bowler/levels.js'
import { type BowlerProfile, checkProfile } from '../../../../src/sim/world/bowler/profile.js'
import {
  type Aim,
  deliveredLaunch,
  deliverInto,
  intendedLaunch,
  laydownMetresOf,
  meantThrow,
  scratchLaunch,
} from '../../../../src/sim/world/bowler/release.js'

const profiles = fc
  .tuple(fc.constantFrom(...LEVELS), fc.constantFrom(...STYLES), fc.constantFrom('right' as const, 'left' as const))
  .map(([level, style, hand]) => levelProfile(level, style, hand))
const aims: fc.Arbitrary<Aim> = fc.record({
  feetBoard: fc.integer({ min: 10, max: 80 }).map((halves) => halves / 2),
  targetBoard: fc.integer({ min: 2, max: 70 }).map((halves) => halves / 2),
  speedStep: fc.constantFrom(-1 as const, 0 as const, 1 as const),
})
const kinds = fc.constantFrom('strike' as const, 'spare' as const)
const normals = fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { minLength: 5, maxLength: 5 })

describe('the throw as meant', () => {
  it('crosses the laydown at the foul line and the target at 15 ft', () => {
    fc.assert(
      fc.property(profiles, aims, kinds, (profile, aim, kind) => {
        const launch = intendedLaunch(profile, aim, kind)
        const slope = launch.directionY / launch.directionX
        const at = (metres: number) => launch.lateralMetres + (metres - launch.startMetres) * slope
        expect(metresToBoard(at(feetToMetres(15)))).toBeCloseTo(aim.targetBoard, 11)
        const slide = metresToBoards(profile.slideToLaydownMetres)
        expect(metresToBoard(at(0))).toBeCloseTo(aim.feetBoard - slide, 11)
        expect(boardToMetres(aim.feetBoard - slide)).toBeCloseTo(laydownMetresOf(profile, aim), 12)
      }),
      { numRuns: 500, seed: 61 },
    )
  })

  it('travels along a unit vector and touches down where the release says', () => {
    fc.assert(
      fc.property(profiles, aims, kinds, normals, (profile, aim, kind, misses) => {
        const launch = deliveredLaunch(profile, aim, kind, misses)
        expect(launch.directionX ** 2 + launch.directionY ** 2).toBeCloseTo(1, 14)
        expect(launch.sineRotation ** 2 + launch.cosineRotation ** 2).toBeCloseTo(1, 14)
        expect(launch.sineTilt ** 2 + launch.cosineTilt ** 2).toBeCloseTo(1, 14)
        expect(launch.startMetres).toBe(profile[kind].loftMetres)
      }),
      { numRuns: 500, seed: 62 },
    )
  })

  it('aims as plane geometry says: 6 boards over 15 ft', () => {
    // arctan(6 boards of 41.5/39 in over 180 in) to the right, for feet on 25, a slide of 7 and a target on 12
    const launch = intendedLaunch(levelProfile('200'), { feetBoard: 25, targetBoard: 12, speedStep: 0 }, 'strike')
    expect(Math.atan2(launch.directionY, launch.directionX)).toBeCloseTo(-Math.atan((6 * 41.5) / 39 / 180), 12)
  })

  it('steps the speed softer and firmer by the profile step', () => {
    const profile = levelProfile('180')
    const speed = (speedStep: -1 | 0 | 1) =>
      intendedLaunch(profile, { feetBoard: 20, targetBoard: 10, speedStep }, 'strike').speedMetresPerSecond
    expect(speed(0)).toBe(profile.strike.speedMetresPerSecond)
    expect(speed(1) - speed(0)).toBeCloseTo(profile.speedStepMetresPerSecond, 12)
    expect(speed(0) - speed(-1)).toBeCloseTo(profile.speedStepMetresPerSecond, 12)
  })
})

describe('the throw as delivered', () => {
  it('is the throw as meant when nothing goes astray, for a bowler of any spread', () => {
    fc.assert(
      fc.property(profiles, aims, kinds, (profile, aim, kind) => {
        const still: BowlerProfile = { ...profile, error: levelProfile('elite').error }
        expect(deliveredLaunch(profile, aim, kind, [0, 0, 0, 0, 0])).toEqual(intendedLaunch(still, aim, kind))
      }),
      { numRuns: 200, seed: 63 },
    )
  })

  it('misses evenly to both sides', () => {
    // opposite draws miss the middle by opposite amounts; the angle is turned, so places agree to second order only
    fc.assert(
      fc.property(profiles, aims, kinds, normals, (profile, aim, kind, misses) => {
        const meant = intendedLaunch(profile, aim, kind)
        const one = deliveredLaunch(profile, aim, kind, misses)
        const other = deliveredLaunch(
          profile,
          aim,
          kind,
          misses.map((miss) => -miss),
        )
        const angle = (launch: typeof one) => Math.atan2(launch.directionY, launch.directionX)
        expect(angle(one) + angle(other)).toBeCloseTo(2 * angle(meant), 12)
        expect(one.speedMetresPerSecond + other.speedMetresPerSecond).toBeCloseTo(2 * meant.speedMetresPerSecond, 12)
        expect(one.spinRadiansPerSecond + other.spinRadiansPerSecond).toBeCloseTo(2 * meant.spinRadiansPerSecond, 10)
      }),
      { numRuns: 300, seed: 64 },
    )
  })

  it('mirrors with the aim: a line and a miss reflected about the middle of the lane', () => {
    const profile: BowlerProfile = { ...levelProfile('200'), slideToLaydownMetres: 0 }
    fc.assert(
      fc.property(aims, normals, (aim, [laydown, angle, ...others]) => {
        const reflected: Aim = { ...aim, feetBoard: 40 - aim.feetBoard, targetBoard: 40 - aim.targetBoard }
        const one = deliveredLaunch(profile, aim, 'strike', [laydown, angle, ...others])
        const other = deliveredLaunch(profile, reflected, 'strike', [-laydown, -angle, ...others])
        expect(metresToBoard(other.lateralMetres)).toBeCloseTo(40 - metresToBoard(one.lateralMetres), 11)
        expect(other.directionY).toBeCloseTo(-one.directionY, 14)
        expect(other.directionX).toBeCloseTo(one.directionX, 14)
        expect(other.speedMetresPerSecond).toBe(one.speedMetresPerSecond)
      }),
      { numRuns: 300, seed: 65 },
    )
  })

  it('is the same for either hand: only the lane is mirrored', () => {
    fc.assert(
      fc.property(aims, kinds, normals, (aim, kind, misses) => {
        const right = deliveredLaunch(levelProfile('200', 'cranker', 'right'), aim, kind, misses)
        expect(deliveredLaunch(levelProfile('200', 'cranker', 'left'), aim, kind, misses)).toEqual(right)
      }),
      { numRuns: 100, seed: 66 },
    )
  })

  it('can be written over a used launch, from the middle of a list of draws', () => {
    const profile = levelProfile('160')
    const aim: Aim = { feetBoard: 22, targetBoard: 9, speedStep: 1 }
    const draws = Float64Array.from([9, 9, 0.3, -1.2, 0.8, 2.1, -0.4, 9])
    const launch = scratchLaunch()
    deliverInto(launch, meantThrow(profile, { feetBoard: 5, targetBoard: 30, speedStep: -1 }, 'spare'), draws, 1)
    deliverInto(launch, meantThrow(profile, aim, 'strike'), draws, 2)
    expect(launch).toEqual(deliveredLaunch(profile, aim, 'strike', [0.3, -1.2, 0.8, 2.1, -0.4]))
  })

  it('still rolls forward at the farthest draw of a sound profile', () => {
    for (const level of LEVELS)
      for (const style of STYLES)
        for (const kind of ['strike', 'spare'] as const) {
          const aim: Aim = { feetBoard: 25, targetBoard: 12, speedStep: -1 }
          // a 32-bit draw reaches 6.34 standard deviations
          const launch = deliveredLaunch(levelProfile(level, style), aim, kind, [0, 0, -6.34, -6.34, 0])
          expect(launch.speedMetresPerSecond).toBeGreaterThan(0.4)
          expect(launch.spinRadiansPerSecond).toBeGreaterThan(0)
          expect(launch.directionX).toBeGreaterThan(0)
        }
  })
})

describe('checking a profile', () => {
  const sound = levelProfile('200')

  it('says what is wrong, what was found and what is allowed', () => {
    const broken: BowlerProfile = {
      ...sound,
      strike: {
        ...sound.strike,
        speedMetresPerSecond: mphToMetresPerSecond(40),
        rotationRadians: degreesToRadians(120),
      },
      spareError: { ...sound.spareError, lateralAngleCorrelation: 1.5 },
    }
    expect(checkProfile(broken)).toEqual([
      'Strike speed is 40 mph, but must be from 8 to 28 mph.',
      'Strike axis rotation is 120°, but must be from 0 to 90°.',
      'Spare laydown-angle correlation is 1.5, but must be from -0.99 to 0.99.',
    ])
  })

  it('refuses what is not a number', () => {
    const broken: BowlerProfile = { ...sound, offNormalErrorFactor: Number.NaN }
    expect(checkProfile(broken).join()).toContain('Error factor off the usual speed is NaN')
  })

  it('refuses spreads that could stop the ball or spin it backwards', () => {
    const wild: BowlerProfile = {
      ...sound,
      error: { ...sound.error, speedMetresPerSecond: mphToMetresPerSecond(3), spinRadiansPerSecond: 10 },
    }
    expect(checkProfile(wild)).toHaveLength(2)
  })
})
