import { mean, sampleVariance } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { changeBetween, estimateOf, meanOf } from '../../../../src/scenarios/reports/review/estimate.js'
import { pooledMeans } from '../../../../src/scenarios/reports/review/pooled.js'
import { coverageOver, WORLDS } from '../../../studies/pooled-groups.js'

const even = (values: readonly number[]) => values.map((value) => ({ value, weight: 1 }))

describe('a weighted mean', () => {
  it('of equal weights is the ordinary one, with its error', () => {
    const values = [3, 1, 4, 1, 5, 9, 2, 6]
    const { mean: centre, standardError } = meanOf(even(values))
    expect(centre).toBeCloseTo(mean(values), 12)
    expect(standardError).toBeCloseTo(Math.sqrt(sampleVariance(values) / values.length), 12)
  })

  it('counts a block as often as it weighs', () => {
    expect(
      meanOf([
        { value: 2, weight: 3 },
        { value: 8, weight: 1 },
      ]).mean,
    ).toBeCloseTo(mean([2, 2, 2, 8]), 12)
    expect(estimateOf([{ value: 7, weight: 0 }]).mean).toBe(0)
  })
})

describe('a change between two periods', () => {
  // Welch's test worked by hand: means 3 and 6, variances 2.5 and 2.5 over five each; degrees 8, 97.5 % point 2.306 (any table).
  it('is the difference of means with Welch’s interval', () => {
    const { pins, low, high } = changeBetween(meanOf(even([1, 2, 3, 4, 5])), meanOf(even([4, 5, 6, 7, 8])))
    expect(pins).toBeCloseTo(3, 12)
    expect(high! - low!).toBeCloseTo(2 * 2.306 * 1, 9)
    expect(changeBetween(meanOf(even([1])), meanOf(even([1, 2]))).low).toBeNull()
  })
})

describe('partial pooling', () => {
  it('draws every mean towards the group’s, the less there is of it the further', () => {
    const players = [even([2, 4]), even([10, 12, 11, 9, 10, 11]), even([5, 8]), even([7, 6, 9]), even([20, 14])]
    const own = players.map((blocks) => meanOf(blocks).mean)
    const pooled = pooledMeans(players)
    const centre = mean(pooled.map(({ mean: one }) => one))
    pooled.forEach(({ mean: one }, at) => {
      expect(Math.abs(one - centre)).toBeLessThanOrEqual(Math.abs(own[at]! - centre) + 0.5)
    })
    expect(pooled[1]!.drawnShare).toBeLessThan(pooled[0]!.drawnShare)
    expect(pooled[1]!.standardError!).toBeLessThan(pooled[0]!.standardError!)
  })

  // The joint posterior by brute force, over a plain grid of τ and the group's mean: no closed form but the normal density.
  it('is what a grid over both unknowns of the group comes to', () => {
    const players = [even([2, 4]), even([10, 12, 11]), even([5, 8]), even([7, 6, 9]), even([20, 14])]
    const degrees = players.reduce((all, blocks) => all + blocks.length - 1, 0)
    const squares = players.map((blocks) => sampleVariance(blocks.map(({ value }) => value)) * (blocks.length - 1))
    const spread = squares.reduce((all, one) => all + one, 0) / degrees
    const own = players.map((blocks) => ({
      mean: mean(blocks.map(({ value }) => value)),
      variance: spread / blocks.length,
    }))
    const density = (x: number, variance: number): number => Math.exp((-x * x) / (2 * variance)) / Math.sqrt(variance)
    let all = 0
    const sums = own.map(() => 0)
    for (let tau = 0.05; tau < 200; tau += tau < 20 ? 0.1 : 2) {
      const width = tau < 20 ? 0.1 : 2
      for (let centre = -150; centre <= 170; centre += 0.5) {
        const fit = own.reduce((product, one) => product * density(one.mean - centre, one.variance + tau * tau), width)
        all += fit
        own.forEach((one, at) => {
          const share = one.variance / (one.variance + tau * tau)
          sums[at]! += fit * (share * centre + (1 - share) * one.mean)
        })
      }
    }
    pooledMeans(players).forEach((one, at) => {
      expect(Math.abs(one.mean - sums[at]! / all)).toBeLessThan(0.02)
      expect(one.quantile(0.975)! - one.quantile(0.025)!).toBeLessThan(2 * 1.96 * one.standardError! * 1.05)
      expect(one.quantile(0.1)!).toBeLessThan(one.quantile(0.5)!)
    })
  })

  it('leaves three players or fewer alone but for the spread they share', () => {
    const pooled = pooledMeans([even([2, 4]), even([10, 12]), even([5])])
    expect(pooled.map(({ mean: one }) => one)).toEqual([3, 11, 5])
    expect(pooled[2]!.standardError).toBeCloseTo(Math.sqrt(2), 12)
    expect(pooledMeans([even([2]), even([3])]).map(({ standardError }) => standardError)).toEqual([null, null])
  })

  it('stays finite where nothing scatters', () => {
    for (const { mean: one } of pooledMeans([even([1, 1]), even([1, 1]), even([1, 1]), even([1, 1])]))
      expect(one).toBe(1)
  })

  // Simulated groups with known truth; the long run with its figures is `npm run study pooled-groups`.
  it('covers what it says, and lies nearer the truth than each player’s own mean', () => {
    const middling = WORLDS.find(({ name }) => name === 'middling')!
    const { covered80, pooledSquaredError, separateSquaredError } = coverageOver(middling, 100, 8)
    expect(covered80).toBeGreaterThan(0.75)
    expect(covered80).toBeLessThan(0.85)
    expect(pooledSquaredError).toBeLessThan(separateSquaredError)
  })
})
