import { leaveRank } from './leave-order.js'
import type { RackNature } from './nature.js'
import { type RackResult, type RackThrow, throwAtRack } from './rack.js'

/**
 * Results of one ball at `count` racks, ordered from best to worst leave, so that one uniform number can pick how
 * lucky the throw is. `natureOf` gives the rack for each index from 0.
 */
export function carryLadder(
  rackThrow: RackThrow,
  natureOf: (index: number) => RackNature,
  count: number,
): readonly RackResult[] {
  return Array.from({ length: count }, (_, index) => throwAtRack(rackThrow, natureOf(index))).sort(
    (first, second) => leaveRank(first.standing) - leaveRank(second.standing),
  )
}
