import { describe, expect, it } from 'vitest'
import { followTheMiss } from '../../../../src/sim/world/block/follow-the-miss.js'
import type { Contact } from '../../../../src/sim/world/block/types.js'
import type { Aim } from '../../../../src/sim/world/bowler/release.js'

const aim: Aim = { feetBoard: 24, targetBoard: 12, speedStep: 0 }
const feetAfter = (contact: Contact, breakpointBoard: number): number =>
  followTheMiss(aim, { arrowsBoard: 12, contact, breakpointBoard }).feetBoard

// Moving the feet in the direction of the miss: common practice, no source.
describe('following the miss', () => {
  it('moves towards the side the ball missed on, further the further it missed', () => {
    const moves = (['missed', 'light', 'pocket', 'high', 'nose', 'crossover', 'past'] as const).map(
      (contact) => feetAfter(contact, 9) - aim.feetBoard,
    )
    expect(moves).toEqual([...moves].sort((a, b) => a - b))
    expect(moves[2]).toBe(0)
  })

  it('tells the own gutter from the far one by the path', () => {
    expect(feetAfter('gutter', 0)).toBeLessThan(aim.feetBoard)
    expect(feetAfter('gutter', 14)).toBeGreaterThan(aim.feetBoard)
  })

  it('changes nothing after a ball that missed its mark', () => {
    expect(followTheMiss(aim, { arrowsBoard: 14, contact: 'crossover', breakpointBoard: 10 })).toEqual(aim)
  })

  it('stays on the approach and the lane', () => {
    const farOut = { feetBoard: 45, targetBoard: 29.5, speedStep: 0 } as const
    const moved = followTheMiss(farOut, { arrowsBoard: 29, contact: 'past', breakpointBoard: 20 })
    expect(moved.feetBoard).toBeLessThanOrEqual(46)
    expect(moved.targetBoard).toBeLessThanOrEqual(30)
  })
})
