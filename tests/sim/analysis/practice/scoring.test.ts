import fc from 'fast-check'
import { quantileSorted } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import {
  idealAnswerOf,
  idealInterval,
  intervalRegret,
  intervalScore,
  lossOf,
  sharesRegret,
  sureScore,
} from '../../../../src/sim/analysis/practice/scoring.js'
import { call, decide, lengthRead, shapeRead, throwOrLane } from './positions-for-tests.js'

const chance = fc.double({ min: 0, max: 1, noNaN: true })
const three = fc
  .tuple(chance, chance, chance)
  .filter((all) => all[0] + all[1] + all[2] > 0.01)
  .map((all) => all.map((one) => one / (all[0] + all[1] + all[2])))
const law = fc.array(fc.double({ min: 10, max: 30, noNaN: true }), { minLength: 10, maxLength: 40 })

/** Brier's score of shares once it is known which of three it was. */
const brier = (stated: readonly number[], came: number): number =>
  stated.reduce((sum, share, i) => sum + (share - (i === came ? 1 : 0)) ** 2, 0)

describe('shares of three families', () => {
  it('are scored by what their expected Brier score exceeds the ideal observer’s by (Brier 1950, for several classes)', () => {
    fc.assert(
      fc.property(three, three, (stated, ideal) => {
        const expected = (shares: readonly number[]) =>
          ideal.reduce((sum, share, i) => sum + share * brier(shares, i), 0)
        expect(sharesRegret(stated, ideal)).toBeCloseTo(expected(stated) - expected(ideal), 10)
      }),
    )
  })
})

describe('intervals', () => {
  it('score their width and ten a unit outside at four fifths (Winkler 1972; Gneiting and Raftery 2007, from memory)', () => {
    expect(intervalScore(10, 12, [11])).toBe(2)
    expect(intervalScore(10, 12, [13])).toBeCloseTo(2 + 10)
    expect(intervalScore(10, 12, [9.5])).toBeCloseTo(2 + 5)
  })

  it('score least, in expectation, at the quantiles of the law', () => {
    fc.assert(
      fc.property(
        law,
        fc.double({ min: 5, max: 35, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (values, low, width) => {
          expect(intervalRegret(low, low + width, values)).toBeGreaterThanOrEqual(-1e-9)
        },
      ),
    )
  })

  it('has the ends that an independent library has for the tenths of a large sample', () => {
    const values = Array.from({ length: 1000 }, (_, i) => Math.sqrt(i) * 3)
    const [low, high] = idealInterval(values)
    expect(low).toBeCloseTo(quantileSorted(values, 0.1), 0)
    expect(high).toBeCloseTo(quantileSorted(values, 0.9), 0)
  })
})

describe('how sure one said to be', () => {
  it('scores best, in expectation, at the true chance (Brier 1950)', () => {
    fc.assert(
      fc.property(chance, chance, (told, truth) => {
        const expected = (sure: number) => truth * sureScore(sure, true) + (1 - truth) * sureScore(sure, false)
        expect(expected(told)).toBeGreaterThanOrEqual(expected(truth) - 1e-12)
      }),
    )
  })
})

describe('a position of any kind', () => {
  it('costs the ideal observer nothing, and nobody less', () => {
    fc.assert(
      fc.property(three, law, chance, three, chance, (ideal, values, share, stated, told) => {
        const low = 10 + 10 * told
        const interval = { kind: 'interval', low, high: low + 3 } as const
        const answers = [
          [shapeRead(ideal), { kind: 'shares', shares: stated } as const],
          [lengthRead(values, [30, 40, 50]), interval],
          [call(values), interval],
          [throwOrLane(share), { kind: 'share', share: told } as const],
          [decide('d', [1.2, 0, 3]), { kind: 'choice', place: Math.floor(told * 2.99) } as const],
        ] as const
        for (const [position, answer] of answers) {
          expect(lossOf(position, idealAnswerOf(position)).pins).toBeCloseTo(0, 9)
          expect(lossOf(position, answer).pins).toBeGreaterThanOrEqual(-1e-9)
        }
      }),
    )
  })

  it('costs all that hangs on it where nothing is known', () => {
    expect(lossOf(shapeRead([0.9, 0.1, 0]), { kind: 'shares', shares: [1 / 3, 1 / 3, 1 / 3] }).pins).toBeCloseTo(2)
    expect(lossOf(throwOrLane(0.9), { kind: 'share', share: 0.5 }).pins).toBeCloseTo(2)
  })

  it('takes no answer of another kind', () => {
    expect(() => lossOf(decide('d', [0, 1]), { kind: 'share', share: 1 })).toThrow(RangeError)
    expect(() => lossOf(throwOrLane(0.5), { kind: 'choice', place: 0 })).toThrow(RangeError)
    expect(() => lossOf(call([17]), { kind: 'share', share: 1 })).toThrow(RangeError)
    expect(() => lossOf(shapeRead([1, 0, 0]), { kind: 'interval', low: 1, high: 2 })).toThrow(RangeError)
  })
})
