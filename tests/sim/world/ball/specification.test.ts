import { describe, expect, it } from 'vitest'
import { degreesToRadians, inchesToMetres, metresToInches, poundsToKilograms } from '../../../../src/sim/units.js'
import { coverFamilies } from '../../../../src/sim/world/ball/cover.js'
import { BALL_RADIUS_METRES, type BallSpecification, checkBall } from '../../../../src/sim/world/ball/specification.js'
import { bag, symmetricSolid } from './bag-for-tests.js'

const faultsOf = (change: Partial<BallSpecification>): readonly string[] => checkBall({ ...symmetricSolid, ...change })

// Limits: equipment specifications of the governing bodies (16 lb; RG 2.46 in since 2010, 2.80 in; differential 0.060 in since
// 2005; friction 0.32; diameter 8.500 to 8.595 in).
describe('the rules for a ball', () => {
  it.each(bag.map((ball) => [ball.name, ball] as const))('pass the %s', (_, ball) => {
    expect(checkBall(ball)).toEqual([])
  })

  it('pass every cover at every finish', () => {
    for (const cover of coverFamilies) {
      for (const surfaceGrit of [180, 360, 500, 1000, 2000, 4000, 6000]) {
        for (const polished of [false, true]) expect(faultsOf({ cover, surfaceGrit, polished })).toEqual([])
      }
    }
  })

  it('pass the very limits', () => {
    const limits = {
      massKilograms: poundsToKilograms(16),
      radiusOfGyrationMetres: inchesToMetres(2.46),
      differentialMetres: inchesToMetres(0.06),
      intermediateDifferentialMetres: inchesToMetres(0.06),
      pinAngleRadians: degreesToRadians(90),
    }
    expect(faultsOf(limits)).toEqual([])
    expect(faultsOf({ radiusOfGyrationMetres: inchesToMetres(2.8) })).toEqual([])
  })

  it.each([
    [{ massKilograms: poundsToKilograms(16.1) }, 'The weight is 16.10 lb, allowed is 6.00 to 16.00 lb.'],
    [
      { radiusOfGyrationMetres: inchesToMetres(2.45) },
      'The radius of gyration is 2.450 in, allowed is 2.460 to 2.800 in.',
    ],
    [
      { radiusOfGyrationMetres: inchesToMetres(2.81) },
      'The radius of gyration is 2.810 in, allowed is 2.460 to 2.800 in.',
    ],
    [{ differentialMetres: inchesToMetres(0.061) }, 'The differential is 0.061 in, allowed is 0.000 to 0.060 in.'],
    [
      { intermediateDifferentialMetres: inchesToMetres(0.05) },
      'The intermediate differential is 0.050 in, allowed is 0.000 to 0.048 in.',
    ],
    [{ pinAngleRadians: degreesToRadians(95) }, 'The pin angle is 95.0 degrees, allowed is 0.0 to 90.0 degrees.'],
    [{ surfaceGrit: 120 }, 'The surface grit is 120, allowed is 180 to 6000.'],
    [{ surfaceGrit: Number.NaN }, 'The surface grit is NaN, allowed is 180 to 6000.'],
  ])('say in one sentence what is wrong with %o', (change, sentence) => {
    expect(faultsOf(change)).toEqual([sentence])
  })

  it('name a cover nobody makes', () => {
    expect(faultsOf({ cover: 'glass' as BallSpecification['cover'] })).toEqual([
      'The cover is "glass", allowed are solid, hybrid, pearl, urethane, plastic.',
    ])
  })

  it('hold for the size every ball here has', () => {
    expect(metresToInches(2 * BALL_RADIUS_METRES)).toBeGreaterThan(8.5)
    expect(metresToInches(2 * BALL_RADIUS_METRES)).toBeLessThan(8.595)
  })
})
