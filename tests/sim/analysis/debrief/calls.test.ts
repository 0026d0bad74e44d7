import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CalledThrow, scoreCalls } from '../../../../src/sim/analysis/debrief/calls.js'
import type { Contact } from '../../../../src/sim/world/block/types.js'

const call = (sureShare: number, isRight: boolean, chance = 0.5): CalledThrow => ({
  called: 'pocket',
  sureShare,
  came: isRight ? 'pocket' : 'high',
  chances: [
    { contact: 'high', chance: 1 - chance },
    { contact: 'pocket', chance },
  ].sort((a, b) => b.chance - a.chance) as CalledThrow['chances'],
})

describe('the score of calls', () => {
  it('is none where nothing was called', () => {
    expect(scoreCalls([])).toBeNull()
  })

  it('counts what came right beside what was claimed and what was to be expected', () => {
    const score = scoreCalls([call(0.9, true, 0.7), call(0.6, false, 0.2), call(0.5, true, 0.4)])!
    expect(score.count).toBe(3)
    expect(score.right).toBe(2)
    expect(score.claimed).toBeCloseTo(2, 12)
    expect(score.toExpect).toBeCloseTo(1.3, 12)
    expect(score.toExpectOfLikeliest).toBeCloseTo(0.7 + 0.8 + 0.6, 12)
  })

  // Brier, Monthly Weather Review 78 (1950): 0 for perfect foresight; for one event told as a coin toss (1/2)^2.
  it('is 0 for certain foresight, 1 for certain error and a quarter for coin tosses', () => {
    expect(scoreCalls([call(1, true), call(1, true)])!.brier).toBe(0)
    expect(scoreCalls([call(1, false)])!.brier).toBe(1)
    expect(scoreCalls([call(0.5, true), call(0.5, false), call(0.5, false)])!.brier).toBe(0.25)
  })

  // Murphy, A new vector partition of the probability score, Journal of Applied Meteorology 12 (1973): the score is
  // reliability - resolution + uncertainty over the groups of equal forecasts.
  it('equals reliability less resolution plus uncertainty', () => {
    const made = fc.record({ sure: fc.constantFrom(0.5, 0.6, 0.7, 0.8, 0.9), isRight: fc.boolean() })
    fc.assert(
      fc.property(fc.array(made, { minLength: 1, maxLength: 60 }), (all) => {
        const share = (some: typeof all) => some.filter(({ isRight }) => isRight).length / some.length
        const overall = share(all)
        const groups = [...new Set(all.map(({ sure }) => sure))].map((sure) => ({
          sure,
          some: all.filter((one) => one.sure === sure),
        }))
        const mean = (of: (group: (typeof groups)[number]) => number) =>
          groups.reduce((sum, group) => sum + group.some.length * of(group), 0) / all.length
        const reliability = mean(({ sure, some }) => (sure - share(some)) ** 2)
        const resolution = mean(({ some }) => (share(some) - overall) ** 2)
        const { brier } = scoreCalls(all.map(({ sure, isRight }) => call(sure, isRight)))!
        expect(brier).toBeCloseTo(reliability - resolution + overall * (1 - overall), 12)
      }),
    )
  })

  // A proper score (Savage, Journal of the American Statistical Association 66, 1971): in expectation nobody does
  // better than by saying what they know.
  it('rewards in expectation those who are as sure as they know', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(share, share, (truth, told) => {
        const expected = (sure: number) =>
          truth * scoreCalls([call(sure, true)])!.brier + (1 - truth) * scoreCalls([call(sure, false)])!.brier
        expect(expected(truth)).toBeLessThanOrEqual(expected(told) + 1e-12)
      }),
    )
  })

  it('gives no chance to a reaction that could not come', () => {
    const never: CalledThrow = { ...call(0.5, false), called: 'gutter' satisfies Contact }
    expect(scoreCalls([never])!.toExpect).toBe(0)
    expect(scoreCalls([never])!.brierByKnown).toBe(0)
  })
})
