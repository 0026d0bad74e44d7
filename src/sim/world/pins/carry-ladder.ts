import { leaveRank } from './leave-order.js'
import type { RackNature } from './nature.js'
import { type RackResult, type RackThrow, throwAtRack } from './rack.js'

/** One of the racks a ball was thrown at, by its index, and what came of it. */
export interface CarryRung {
  readonly index: number
  readonly result: RackResult
}

/**
 * Results of one ball at `count` racks, ordered from best to worst leave, so that one uniform number can pick how
 * lucky the throw is. `natureOf` gives the rack for each index from 0.
 */
export function carryRungs(
  rackThrow: RackThrow,
  natureOf: (index: number) => RackNature,
  count: number,
): readonly CarryRung[] {
  return inOrder(
    Array.from({ length: count }, (_, index) => ({ index, result: throwAtRack(rackThrow, natureOf(index)) })),
  )
}

const inOrder = (rungs: readonly CarryRung[]): CarryRung[] =>
  [...rungs].sort((first, second) => leaveRank(first.result.standing) - leaveRank(second.result.standing))

/**
 * The rung at a place of that ladder, counted from 0 for the best. Nothing ranks before a cleared rack, and equals stand in the order
 * of their racks; so as soon as enough racks are cleared the rest need not be thrown, and the answer is the same to the bit.
 */
export function carryRungAt(
  rackThrow: RackThrow,
  natureOf: (index: number) => RackNature,
  count: number,
  place: number,
): CarryRung {
  const rungs: CarryRung[] = []
  let cleared = 0
  for (let index = 0; index < count; index++) {
    const rung = { index, result: throwAtRack(rackThrow, natureOf(index)) }
    if (rung.result.standing === 0 && cleared++ === place) return rung
    rungs.push(rung)
  }
  return inOrder(rungs)[place]!
}

/** The same without telling which rack it was. */
export const carryLadder = (
  rackThrow: RackThrow,
  natureOf: (index: number) => RackNature,
  count: number,
): readonly RackResult[] => carryRungs(rackThrow, natureOf, count).map(({ result }) => result)
