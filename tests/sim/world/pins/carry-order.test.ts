import { describe, expect, it } from 'vitest'
import { carryLadder, carryRungAt, carryRungs } from '../../../../src/sim/world/pins/carry-ladder.js'
import { leaveRank } from '../../../../src/sim/world/pins/leave-order.js'
import { FULL_RACK, hasGap, maskOf, mirrorMask } from '../../../../src/sim/world/pins/leaves.js'
import { throwAtRack } from '../../../../src/sim/world/pins/rack.js'
import { rackNumber, throwOf } from './rack-numbers.js'

describe('order of leaves', () => {
  it('ranks all 1,024 once, the strike first', () => {
    const ranks = Array.from({ length: FULL_RACK + 1 }, (_, mask) => leaveRank(mask))
    expect(new Set(ranks).size).toBe(1024)
    expect(leaveRank(0)).toBe(0)
  })

  it('puts what is harder to spare behind what is easier', () => {
    // ESPN The Magazine, Feb 2011, televised matches: 10 pin made 95.9 %, 3-10 48.6 %, 4-6-7-10 1 of 30, 7-10 0 of 53.
    const hardening = [[10], [3, 10], [4, 6, 7, 10], [7, 10]].map(maskOf)
    for (let index = 1; index < hardening.length; index++)
      expect(leaveRank(hardening[index]!)).toBeGreaterThan(leaveRank(hardening[index - 1]!))
    for (let mask = 1; mask <= FULL_RACK; mask++)
      if (hasGap(mask)) expect(leaveRank(mask)).toBeGreaterThan(leaveRank(FULL_RACK))
  })

  it('ranks a leave and its mirror image side by side, but for ties broken by number', () => {
    const ordered = Array.from({ length: FULL_RACK + 1 }, (_, mask) => mask).sort((a, b) => leaveRank(a) - leaveRank(b))
    // Gap, number of pins and reach to the side are the same for both, so only equals stand between them.
    for (const mask of [maskOf([10]), maskOf([3, 10]), maskOf([7, 9])]) {
      const low = Math.min(leaveRank(mask), leaveRank(mirrorMask(mask)))
      const high = Math.max(leaveRank(mask), leaveRank(mirrorMask(mask)))
      for (const between of ordered.slice(low, high + 1)) expect(hasGap(between)).toBe(hasGap(mask))
    }
  })
})

describe('carry ladder', () => {
  it('holds the same results as the throws it is made of, best first', () => {
    const rackThrow = throwOf(16.6, 5)
    const natureOf = (index: number) => rackNumber('ladder', index)
    const ladder = carryLadder(rackThrow, natureOf, 24)
    const ranks = ladder.map(({ standing }) => leaveRank(standing))
    expect(ranks).toEqual([...ranks].sort((first, second) => first - second))
    expect(new Set(ranks).size).toBeGreaterThan(1)
    const single = Array.from({ length: 24 }, (_, index) => throwAtRack(rackThrow, natureOf(index)).standing)
    expect(ladder.map(({ standing }) => standing).sort()).toEqual(single.sort())
  })

  it('has the same rung at each place whether or not the racks after it are thrown', () => {
    const natureOf = (index: number) => rackNumber('ladder', index)
    for (const rackThrow of [throwOf(17.5, 5), throwOf(16.6, 4)]) {
      const ladder = carryRungs(rackThrow, natureOf, 8)
      ladder.forEach((rung, place) => {
        expect(carryRungAt(rackThrow, natureOf, 8, place)).toEqual(rung)
      })
    }
  })
})
