import { describe, expect, it } from 'vitest'
import { degreesToRadians, inchesToMetres, metresToInches } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { coreOf, freshCoverShare, spinRadiusOfGyration, trackGap } from '../../../../src/sim/world/ball/flare.js'
import { BALL_RADIUS_METRES } from '../../../../src/sim/world/ball/specification.js'
import { symmetricSolid, urethane } from './bag-for-tests.js'

const core = (differentialInches: number, pinDegrees: number, intermediateInches = 0) =>
  coreOf(
    inchesToMetres(2.5),
    inchesToMetres(differentialInches),
    inchesToMetres(intermediateInches),
    degreesToRadians(pinDegrees),
  )

/**
 * Judge: the free top followed by Euler's equations for a hundredth of a turn in small steps; a hundred times the way its
 * angular momentum has then wandered over the cover.
 */
function gapByEuler({ lowMetres, middleMetres, highMetres, spinAxis }: ReturnType<typeof coreOf>): number {
  const inertia = [lowMetres ** 2, middleMetres ** 2, highMetres ** 2] as const
  const spinMoment = 1 / spinAxis.reduce((sum, part, index) => sum + part ** 2 / inertia[index]!, 0)
  const spin = 40
  let momentum = spinAxis.map((part) => part * spinMoment * spin)
  const steps = 200
  const dt = (2 * Math.PI) / spin / 100 / steps
  const slope = (l: readonly number[]): number[] => {
    const [a, b, c] = l.map((part, index) => part / inertia[index]!) as [number, number, number]
    const [x, y, z] = l as [number, number, number]
    return [y * c - z * b, z * a - x * c, x * b - y * a]
  }
  for (let step = 0; step < steps; step++) {
    const first = slope(momentum)
    const middle = slope(momentum.map((part, index) => part + 0.5 * dt * first[index]!))
    momentum = momentum.map((part, index) => part + dt * middle[index]!)
  }
  const wandered = Math.hypot(...momentum.map((part, index) => part - spinAxis[index]! * spinMoment * spin))
  return (100 * wandered * BALL_RADIUS_METRES) / (spinMoment * spin)
}

describe('flare', () => {
  it.each([
    [0.05, 45, 0],
    [0.03, 30, 0],
    [0.054, 40, 0.018],
    [0.048, 70, 0.03],
  ])(
    'moves the track as a free top does (differential %f in, pin at %f°, intermediate %f in)',
    (total, pin, middle) => {
      const flaring = core(total, pin, middle)
      expect(trackGap(flaring, BALL_RADIUS_METRES) / gapByEuler(flaring)).toBeCloseTo(1, 3)
    },
  )

  it('is none without differential, with the pin on the axis or square to it', () => {
    expect(trackGap(core(0, 45), BALL_RADIUS_METRES)).toBeCloseTo(0, 12)
    expect(trackGap(core(0.05, 0), BALL_RADIUS_METRES)).toBeCloseTo(0, 12)
    expect(trackGap(core(0.05, 90), BALL_RADIUS_METRES)).toBeCloseTo(0, 12)
  })

  it('is greatest with the pin near 45 degrees', () => {
    const gaps = [15, 30, 45, 60, 75].map((pin) => trackGap(core(0.05, pin), BALL_RADIUS_METRES))
    expect(Math.max(...gaps)).toBe(gaps[2])
  })

  it('gives strong cores some half an inch a lap (common practice, no source)', () => {
    expect(metresToInches(trackGap(core(0.05, 45), BALL_RADIUS_METRES))).toBeGreaterThan(0.35)
    expect(metresToInches(trackGap(core(0.05, 45), BALL_RADIUS_METRES))).toBeLessThan(0.7)
  })

  it('brings more fresh cover the wider the laps lie apart', () => {
    const shares = [0, 0.1, 0.22, 0.5, 1].map((inches) => freshCoverShare(inchesToMetres(inches)))
    expect(shares[0]).toBe(0)
    expect([...shares].sort((a, b) => a - b)).toEqual(shares)
    expect(shares.at(-1)).toBeLessThan(1)
    expect(dynamicsOf(symmetricSolid).freshCoverShare).toBeGreaterThan(dynamicsOf(urethane).freshCoverShare)
  })

  it('spins about a radius of gyration between the lowest and the highest', () => {
    expect(metresToInches(spinRadiusOfGyration(core(0.05, 0)))).toBeCloseTo(2.5, 9)
    expect(metresToInches(spinRadiusOfGyration(core(0.05, 90)))).toBeCloseTo(2.55, 9)
    const between = metresToInches(spinRadiusOfGyration(core(0.05, 45)))
    expect(between).toBeGreaterThan(2.52)
    expect(between).toBeLessThan(2.53)
  })
})
