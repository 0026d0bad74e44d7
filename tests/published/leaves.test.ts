import { describe, expect, it } from 'vitest'
import {
  countPins,
  FULL_RACK,
  isSplit,
  isWashout,
  leaveName,
  listPins,
  maskOf,
  mirrorMask,
} from '../../src/sim/world/pins/leaves.js'

const leaves = Array.from({ length: FULL_RACK }, (_, index) => index + 1)

describe('leaves', () => {
  it('counts the standing states', () => {
    // Arithmetic: 2^10 states, one of them the strike; half of them without the head pin, less the strike.
    expect(leaves).toHaveLength(1023)
    expect(leaves.filter((mask) => !(mask & 1))).toHaveLength(511)
    // Arithmetic: 10 choose 2.
    expect(leaves.filter((mask) => countPins(mask) === 2)).toHaveLength(45)
    // Burnside's lemma: pins 1 and 5 and four mirrored pairs give 2^6 fixed states, (1024 + 64) / 2 - 1 = 543.
    expect(new Set(leaves.map((mask) => Math.min(mask, mirrorMask(mask)))).size).toBe(543)
  })

  it('calls 459 leaves splits', () => {
    // Commonly printed count of splits, from memory; reproduced by both clauses of IBF rule 2.1.8 read literally.
    const splits = leaves.filter(isSplit)
    expect(splits).toHaveLength(459)
    // Arithmetic on the two clauses: 24 of the two-pin leaves are splits.
    expect(splits.filter((mask) => countPins(mask) === 2)).toHaveLength(24)
  })

  it("follows the rule book's own examples", () => {
    // IBF rule 2.1.8 names 3-10, 4-9 and 4-6-7-10 for its first clause and 9-10 for its second.
    for (const pins of [
      [3, 10],
      [4, 9],
      [4, 6, 7, 10],
      [9, 10],
      [5, 6],
      [7, 9],
    ])
      expect(isSplit(maskOf(pins))).toBe(true)
    for (const pins of [[2, 8], [3, 9], [10], [3, 6, 10], [2, 4, 5, 8], [1, 2, 10], [1, 7]])
      expect(isSplit(maskOf(pins))).toBe(false)
  })

  it('mirrors twice to the same leave and keeps split and washout', () => {
    for (const mask of leaves) {
      expect(mirrorMask(mirrorMask(mask))).toBe(mask)
      expect(isSplit(mirrorMask(mask))).toBe(isSplit(mask))
      expect(isWashout(mirrorMask(mask))).toBe(isWashout(mask))
      expect(maskOf(listPins(mask))).toBe(mask)
    }
  })

  it('names leaves as the trade does', () => {
    // Common practice, no source: the words bowlers use.
    const named: readonly (readonly [readonly number[], string])[] = [
      [[10], '10 pin'],
      [[4, 6, 7, 10], '4-6-7-10 big four'],
      [[2, 7], '2-7 baby split'],
      [[3, 10], '3-10 baby split'],
      [[3, 5, 6, 9], '3-5-6-9 bucket'],
      [[1, 2, 4, 10], '1-2-4-10 washout'],
      [[5, 7, 10], '5-7-10 lily'],
      [[1, 2, 4, 7], '1-2-4-7 picket fence'],
      [[4, 9], '4-9 split'],
      [[3, 6, 10], '3-6-10'],
    ]
    for (const [pins, name] of named) expect(leaveName(maskOf(pins))).toBe(name)
    expect(leaveName(0)).toBe('strike')
    expect(leaveName(FULL_RACK)).toBe('full rack')
    expect(new Set(leaves.map(leaveName)).size).toBe(1023)
  })
})
