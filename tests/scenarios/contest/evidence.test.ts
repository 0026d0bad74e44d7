import { sampleRankCorrelation } from 'simple-statistics'
import { expect, it } from 'vitest'
import { type ChoiceTrace, testsOf } from '../../../src/scenarios/contest/evidence/evidence.js'
import {
  binomialHigh,
  correlation,
  rankCorrelationLow,
  ranksOf,
  signFlipLow,
} from '../../../src/scenarios/contest/evidence/tests.js'
import { drawNormal, stream } from '../../../src/sim/random.js'

const source = (index: number) => stream({ seed: 'evidence', game: 0, frame: 0, ball: 0, purpose: 'study', index })
const normals = (index: number, count: number): number[] => {
  const draw = source(index)
  return Array.from({ length: count }, () => drawNormal(draw))
}

// Binomial tail: a table of exact values, B(n, p) upper tails by hand: P(X ≥ 8 | 10, 1/2) = 56/1024.
it('has the binomial tail of the textbooks', () => {
  expect(binomialHigh(8, 10, 0.5)).toBeCloseTo(56 / 1024, 12)
  expect(binomialHigh(0, 10, 0.5)).toBe(1)
  expect(binomialHigh(10, 10, 0.15)).toBeCloseTo(0.15 ** 10, 14)
})

// simple-statistics is an independent library.
it('has the rank correlation that a reference library has', () => {
  const [xs, ys] = [normals(1, 40), normals(2, 40)]
  expect(rankCorrelationLow(xs, ys).rho).toBeCloseTo(sampleRankCorrelation(xs, ys), 12)
  expect(ranksOf([3, 1, 3, 2])).toEqual([3.5, 1, 3.5, 2])
  expect(correlation([1, 1, 1], [1, 2, 3])).toBe(0)
})

// All 2^n flips counted out for a small case.
it('has the sign-flip probability that counting all flips has', () => {
  const values = [-2, -1, -3, 0.5, -1.5, -0.25, 1, -2.5]
  const observed = values.reduce((sum, value) => sum + value, 0)
  let asLow = 0
  for (let mask = 0; mask < 256; mask++) {
    const sum = values.reduce((all, value, at) => all + ((mask >> at) & 1 ? -value : value), 0)
    if (sum <= observed + 1e-12) asLow++
  }
  // Four standard errors of 9,999 draws.
  expect(Math.abs(signFlipLow(values) - asLow / 256)).toBeLessThan(
    4 * Math.sqrt(((asLow / 256) * (1 - asLow / 256)) / 9999),
  )
})

const honest = (index: number): ChoiceTrace[] => {
  const [swing, off, miss] = [normals(index, 20), normals(index + 100, 20), normals(index + 200, 20)]
  return swing.map((one, at) => ({
    game: 1,
    frame: 1 + (at % 10),
    swing: one,
    offBest: Math.round(off[at]! * 2),
    miss: Math.round(miss[at]! * 2),
    isBest: at % 10 === 0,
  }))
}

it('calls few honest players unlikely, and all who know the oil, the coming miss or the best choice', () => {
  const field = Array.from({ length: 24 }, (_, index) => honest(1000 + index))
  const others = field.flat()
  const low = field.map((choices) => testsOf(choices, others).map(({ p }) => p < 0.01))
  // Expected 0.24 of 24 a test; five or more has a probability below 0.00001 (binomial).
  for (const place of [0, 1, 2]) expect(low.filter((one) => one[place]).length).toBeLessThan(5)
  const knowing = honest(1).map((one) => ({ ...one, swing: one.swing - 1.2 }))
  expect(testsOf(knowing, others)[0]!.p).toBeLessThan(0.01)
  const foreseeing = honest(2).map((one) => ({ ...one, offBest: -one.miss }))
  expect(testsOf(foreseeing, others)[1]!.p).toBeLessThan(0.001)
  const machine = honest(3).map((one) => ({ ...one, isBest: true }))
  expect(testsOf(machine, others)[2]!.p).toBeLessThan(1e-6)
})
