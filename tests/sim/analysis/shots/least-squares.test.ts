import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { pseudoInverse } from '../../../../src/sim/analysis/shots/least-squares.js'

const POINTS: readonly (readonly [number, number])[] = [
  [0, 1],
  [1, 2.5],
  [2.5, 2],
  [4, 6],
  [7, 5.5],
]

describe('coefficients that fit points best', () => {
  it('are those of a straight line by a general statistics library', () => {
    // source: simple-statistics, linearRegression
    const { m, b } = linearRegression(POINTS.map((point) => [...point]))
    const inverse = pseudoInverse(POINTS.map(([x]) => [1, x]))
    const [offset, slope] = inverse.map((row) => row.reduce((sum, share, at) => sum + share * POINTS[at]![1], 0))
    expect(offset).toBeCloseTo(b, 12)
    expect(slope).toBeCloseTo(m, 12)
  })

  it('give back a polynomial exactly where the points lie on one', () => {
    const at = [-2, -1, 0.5, 1, 3]
    const inverse = pseudoInverse(at.map((x) => [1, x, x ** 2, x ** 3]))
    const values = at.map((x) => 3 - 2 * x + 0.5 * x ** 3)
    const fitted = inverse.map((row) => row.reduce((sum, share, k) => sum + share * values[k]!, 0))
    for (const [k, coefficient] of [3, -2, 0, 0.5].entries()) expect(fitted[k]).toBeCloseTo(coefficient, 9)
  })

  it('are refused where the points do not settle them', () => {
    expect(() =>
      pseudoInverse([
        [0, 0],
        [0, 1],
      ]),
    ).toThrow(RangeError)
  })
})
