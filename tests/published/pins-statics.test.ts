import { describe, expect, it } from 'vitest'
import { metresToInches, poundsToKilograms, STANDARD_GRAVITY } from '../../src/sim/units.js'
import { USUAL_MATERIALS } from '../../src/sim/world/pins/materials.js'
import { IDEAL_NATURE } from '../../src/sim/world/pins/nature.js'
import {
  PIN_AXIAL_GYRATION_METRES,
  PIN_BASE_RADIUS_METRES,
  PIN_CENTRE_OF_GRAVITY_METRES,
  PIN_MASS_KILOGRAMS,
  PIN_TRANSVERSE_GYRATION_METRES,
} from '../../src/sim/world/pins/pin-body.js'
import { pinRadiusInches, turnPin } from '../../src/sim/world/pins/pin-profile.js'
import { BALL } from '../../src/sim/world/pins/rack-world.js'
import {
  DECK_END_METRES,
  DECK_HALF_WIDTH_METRES,
  SPOT_DOWN_LANE_METRES,
  SPOT_LEFT_METRES,
} from '../../src/sim/world/pins/spots.js'
import { bench, lonePin } from '../sim/world/pins/lone-bodies.js'
import { throwOf } from '../sim/world/pins/rack-numbers.js'

const degrees = (radians: number): number => (radians * 180) / Math.PI

describe('pin deck', () => {
  it('has its spots where the lane rules put them', () => {
    // Governing body's lane rules: neighbours 12 in apart, triangle side 36 in, head pin to pit 34 3/16 in.
    const distance = (first: number, second: number): number =>
      metresToInches(
        Math.hypot(
          SPOT_DOWN_LANE_METRES[first - 1]! - SPOT_DOWN_LANE_METRES[second - 1]!,
          SPOT_LEFT_METRES[first - 1]! - SPOT_LEFT_METRES[second - 1]!,
        ),
      )
    for (const [first, second] of [
      [1, 2],
      [1, 3],
      [2, 5],
      [6, 10],
      [7, 8],
      [9, 10],
    ] as const)
      expect(distance(first, second)).toBeCloseTo(12, 9)
    for (const [first, second] of [
      [1, 7],
      [1, 10],
      [7, 10],
    ] as const)
      expect(distance(first, second)).toBeCloseTo(36, 9)
    expect(metresToInches(DECK_END_METRES)).toBeCloseTo(34.1875, 9)
    // Row pitch 12 * sqrt(3) / 2 = 10.3923 in.
    expect(metresToInches(SPOT_DOWN_LANE_METRES[1]!)).toBeCloseTo(10.3923, 4)
    // 7 and 10 stand 2 3/4 in from the edge of a 41 1/2 in lane.
    expect(metresToInches(DECK_HALF_WIDTH_METRES - SPOT_LEFT_METRES[6]!)).toBeCloseTo(2.75, 9)
    expect(SPOT_LEFT_METRES[9]).toBe(-SPOT_LEFT_METRES[6]!)
  })
})

describe('pin statics', () => {
  it('keeps to the pin rules', () => {
    // Governing body: 3 lb 6 oz to 3 lb 10 oz; centre of gravity 5 40/64 to 5 60/64 in above the base.
    expect(PIN_MASS_KILOGRAMS).toBeGreaterThanOrEqual(poundsToKilograms(3 + 6 / 16))
    expect(PIN_MASS_KILOGRAMS).toBeLessThanOrEqual(poundsToKilograms(3 + 10 / 16))
    const centre = metresToInches(PIN_CENTRE_OF_GRAVITY_METRES)
    expect(centre).toBeGreaterThanOrEqual(5.625)
    expect(centre).toBeLessThanOrEqual(5.9375)
    // Published pin dimensions: belly 4.766 in at 4 1/2, neck 1.797 in at 10, head 2.547 in.
    expect(2 * pinRadiusInches(4.5)).toBeCloseTo(4.766, 3)
    expect(2 * pinRadiusInches(10)).toBeCloseTo(1.797, 3)
    expect(2 * pinRadiusInches(13.5)).toBeCloseTo(2.547, 3)
    // A solid of that outline must have the density of coated maple, 0.727 to 0.781 g/mL for the allowed masses.
    const density = PIN_MASS_KILOGRAMS / turnPin().volumeCubicMetres
    expect(density).toBeGreaterThan(727)
    expect(density).toBeLessThan(781)
  })

  it('has the inertia of a uniform solid of the drawing', () => {
    // Uniform solid of the pin's outline, worked by disc integration: I_t 0.01345 (5 %), I_a 0.00198 kg m² (10 %).
    const across = PIN_MASS_KILOGRAMS * PIN_TRANSVERSE_GYRATION_METRES ** 2
    const along = PIN_MASS_KILOGRAMS * PIN_AXIAL_GYRATION_METRES ** 2
    expect(Math.abs(across / 0.01345 - 1)).toBeLessThan(0.05)
    expect(Math.abs(along / 0.00198 - 1)).toBeLessThan(0.1)
    // Energy to tip over the edge: 0.035 J, by m g (sqrt(h² + r²) - h).
    const rise = Math.hypot(PIN_CENTRE_OF_GRAVITY_METRES, PIN_BASE_RADIUS_METRES) - PIN_CENTRE_OF_GRAVITY_METRES
    expect(PIN_MASS_KILOGRAMS * STANDARD_GRAVITY * rise).toBeCloseTo(0.035, 3)
  })

  it('topples where the centre of gravity passes over the edge', () => {
    // Statics: atan(1.0155 / 5.78) = 9.96 degrees, tolerance 0.3; the sharp edge is that of the drawing's base.
    const fallsFrom = (leanDegrees: number): boolean => {
      const { world, step } = lonePin()
      const lean = (leanDegrees * Math.PI) / 180
      world.axis[1] = Math.sin(lean)
      world.axis[2] = Math.cos(lean)
      world.place[2] = PIN_CENTRE_OF_GRAVITY_METRES * Math.cos(lean) + PIN_BASE_RADIUS_METRES * Math.sin(lean)
      for (let number = 0; number < 4000; number++) step(number, 1 / 1000)
      return world.axis[2]! < 0.5
    }
    let stands = 5
    let falls = 15
    while (falls - stands > 0.02) {
      const middle = (stands + falls) / 2
      if (fallsFrom(middle)) falls = middle
      else stands = middle
    }
    expect(Math.abs(stands - 9.96)).toBeLessThan(0.3)
  })
})

describe('first hit', () => {
  /** Ball and head pin alone just after they part, frictionless at restitution 0.70. */
  function firstHit(board: number, angle: number, pounds: number) {
    const materials = { ...USUAL_MATERIALS, ballPinRestitution: 0.7, ballPinFriction: 0, ballDeckFriction: 0 }
    const made = bench(throwOf(board, angle, 17.5, 1, pounds), IDEAL_NATURE, materials)
    const { velocity } = made.world
    const before = Math.hypot(velocity[BALL * 3]!, velocity[BALL * 3 + 1]!)
    let number = 0
    while (made.step(number, 1 / 1000) === 0) number++
    const at = BALL * 3
    const speed = Math.hypot(velocity[at]!, velocity[at + 1]!)
    return {
      turnedRight: angle - degrees(Math.atan2(velocity[at + 1]!, velocity[at]!)),
      kept: speed / before,
      pinLeft: degrees(Math.atan2(velocity[1]!, velocity[0]!)),
      pinShare: Math.hypot(velocity[0]!, velocity[1]!) / before,
    }
  }

  it('turns and slows the ball as a single frictionless impact must', () => {
    // Stronge, Impact Mechanics: Newton's law with the pin's effective mass 1.384 kg (contact 1.39 in below its centre
    // of gravity), worked for a 15 lb ball and restitution 0.70. Tolerances: 1 degree and 0.03 of the speed.
    const worked = [
      [17.5, 0, 7.9, 0.766, 23.5, 1.13],
      [17.5, 4, 7.9, 0.765, 27.5, 1.13],
      [17.5, 6, 7.9, 0.765, 29.4, 1.13],
      [16.5, 6, 9.4, 0.812, 39.7, 1.02],
      [18.5, 6, 5.2, 0.732, 19.8, 1.2],
    ] as const
    for (const [board, angle, turned, kept, pinLeft, pinShare] of worked) {
      const hit = firstHit(board, angle, 15)
      expect(Math.abs(hit.turnedRight - turned)).toBeLessThan(1)
      expect(Math.abs(hit.kept - kept)).toBeLessThan(0.03)
      expect(Math.abs(hit.pinLeft - pinLeft)).toBeLessThan(1.5)
      expect(Math.abs(hit.pinShare - pinShare)).toBeLessThan(0.05)
    }
  })

  it('turns a light ball more than a heavy one', () => {
    // The same calculation: 8.5 degrees for 14 lb, 7.3 for 16 lb.
    const light = firstHit(17.5, 6, 14).turnedRight
    const heavy = firstHit(17.5, 6, 16).turnedRight
    expect(Math.abs(light - 8.5)).toBeLessThan(1)
    expect(Math.abs(heavy - 7.3)).toBeLessThan(1)
    expect(light).toBeGreaterThan(heavy + 0.5)
  })
})
