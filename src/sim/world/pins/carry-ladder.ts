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
  return Array.from({ length: count }, (_, index) => ({ index, result: throwAtRack(rackThrow, natureOf(index)) })).sort(
    (first, second) => leaveRank(first.result.standing) - leaveRank(second.result.standing),
  )
}

/** The same without telling which rack it was. */
export const carryLadder = (
  rackThrow: RackThrow,
  natureOf: (index: number) => RackNature,
  count: number,
): readonly RackResult[] => carryRungs(rackThrow, natureOf, count).map(({ result }) => result)
