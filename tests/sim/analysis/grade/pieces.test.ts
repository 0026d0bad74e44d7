import { describe, expect, it } from 'vitest'
import { percentileAmongPlausible } from '../../../../src/sim/analysis/grade/plausible.js'
import { neighboursOf } from '../../../../src/sim/analysis/shots/neighbours.js'
import { pairedDifference } from '../../../../src/sim/analysis/shots/worth-matrix.js'
import { givenAway, tooCloseToCall } from '../../../../src/sim/analysis/value/too-close.js'
import { exponential } from '../../../../src/sim/exact-math.js'

describe('too close to call', () => {
  // 1.64: two-sided 90 % point of the normal distribution; worked by hand
  it('is 1.64 standard errors, a tenth of a pin at least', () => {
    expect(tooCloseToCall(0)).toBe(0.1)
    expect(tooCloseToCall(0.05)).toBe(0.1)
    expect(tooCloseToCall(0.5)).toBeCloseTo(0.82, 12)
  })

  it('is taken off what is lost, or off what its best neighbour loses', () => {
    expect(givenAway(2, 1.5, 0.4)).toBeCloseTo(1.1, 12)
    expect(givenAway(1.2, 1.5, 0.4)).toBeCloseTo(0.8, 12)
    expect(givenAway(0.3, 0.3, 0.4)).toBe(0)
  })
})

describe('percentile among plausible choices', () => {
  it('weighs choices by the exponential of their worth and leaves silly ones out', () => {
    const sweeps = [
      { ballIndex: 0, worth: Float64Array.of(1, 0, -5) },
      { ballIndex: 1, worth: Float64Array.of(-1) },
    ]
    const [a, b, c] = [1, exponential(-1), exponential(-2)]
    expect(percentileAmongPlausible(sweeps, 0)).toBe(1)
    expect(percentileAmongPlausible(sweeps, 0.5)).toBeCloseTo((b + c) / (a + b + c), 12)
    expect(percentileAmongPlausible(sweeps, 1.5)).toBeCloseTo(c / (a + b + c), 12)
    expect(percentileAmongPlausible(sweeps, 4)).toBe(0)
  })
})

describe('neighbours', () => {
  it('are a board of feet and half a board of target either way, on the lane', () => {
    const near = neighboursOf({ feetBoard: 20, targetBoard: 10, speedStep: 1 })
    expect(near).toHaveLength(15)
    for (const aim of near) {
      expect(Math.abs(aim.feetBoard - 20)).toBeLessThanOrEqual(1)
      expect(Math.abs(aim.targetBoard - 10)).toBeLessThanOrEqual(0.5)
      expect(aim.speedStep).toBe(1)
    }
    expect(neighboursOf({ feetBoard: 46, targetBoard: 30, speedStep: 0 })).toHaveLength(6)
  })
})

describe('paired difference', () => {
  // worked by hand: differences 1, 2, 3 have mean 2 and standard error 1/√3
  it('has the mean and standard error of the differences', () => {
    const { mean, standardError } = pairedDifference(Float64Array.of(2, 4, 6), Float64Array.of(1, 2, 3))
    expect(mean).toBeCloseTo(2, 12)
    expect(standardError).toBeCloseTo(1 / Math.sqrt(3), 12)
  })
})
