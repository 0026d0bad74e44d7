import { describe, expect, it } from 'vitest'
import { deliveryNodes, ERROR_DIMENSIONS } from '../../../../src/sim/analysis/shots/delivery-nodes.js'
import { exponential } from '../../../../src/sim/exact-math.js'

const COUNT = 2048
const nodes = deliveryNodes(COUNT, 12_345)
const column = (dimension: number): number[] =>
  Array.from({ length: COUNT }, (_, k) => nodes[k * ERROR_DIMENSIONS + dimension])
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
const DIMENSIONS = Array.from({ length: ERROR_DIMENSIONS }, (_, d) => d)

describe('delivery nodes', () => {
  it('have mean 0 and variance 1 in every dimension', () => {
    for (const d of DIMENSIONS) {
      expect(mean(column(d))).toBeCloseTo(0, 12)
      expect(mean(column(d).map((z) => z * z))).toBeCloseTo(1, 12)
    }
  })

  // moments of the standard normal distribution: third 0, fourth 3, mean of exp(z/2) = exp(1/8); within one standard
  // error of as many independent draws (variances of z³, z⁴, exp(z/2): 15, 96, exp(1/2) - exp(1/4))
  it('have the higher moments of normal numbers', () => {
    for (const d of DIMENSIONS) {
      expect(Math.abs(mean(column(d).map((z) => z ** 3)))).toBeLessThan(Math.sqrt(15 / COUNT))
      expect(Math.abs(mean(column(d).map((z) => z ** 4)) - 3)).toBeLessThan(Math.sqrt(96 / COUNT))
      expect(Math.abs(mean(column(d).map((z) => exponential(z / 2))) - exponential(1 / 8))).toBeLessThan(
        Math.sqrt((exponential(1 / 2) - exponential(1 / 4)) / COUNT),
      )
    }
  })

  // within two standard errors of as many independent draws: products of normal numbers have variance 1, of their squares 4
  it('have uncorrelated dimensions, and squares that are', () => {
    for (const a of DIMENSIONS)
      for (const b of DIMENSIONS) {
        if (a >= b) continue
        const [first, second] = [column(a), column(b)]
        expect(Math.abs(mean(first.map((z, k) => z * second[k])))).toBeLessThan(2 / Math.sqrt(COUNT))
        expect(Math.abs(mean(first.map((z, k) => (z * z - 1) * (second[k] ** 2 - 1))))).toBeLessThan(
          4 / Math.sqrt(COUNT),
        )
      }
  })

  it('are the same from the same start and none the same from another', () => {
    expect(deliveryNodes(64, 12_345)).toEqual(deliveryNodes(64, 12_345))
    const others = new Set(deliveryNodes(64, 99_000))
    expect(deliveryNodes(64, 12_345).filter((z) => others.has(z))).toHaveLength(0)
  })
})
