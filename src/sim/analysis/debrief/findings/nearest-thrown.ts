import type { Decision, ThrowRecord } from '../../../world/block/types.js'
import { FULL_RACK } from '../../../world/pins/leaves.js'
import { distanceBetween } from '../../grade/nearest-as-good.js'

/**
 * The first ball that a choice is the smallest change from, among those thrown on the lane of a throw up to it: the latest of
 * equals. A small change from something already thrown is what a player can do.
 *
 * @param at number of the throw, itself among those looked at
 * @returns its number in the block
 */
export function nearestThrown(throws: readonly ThrowRecord[], at: number, to: Decision): number {
  const lane = throws[at].spot.lane
  const ballOf = ({ ballId }: Decision): number => (ballId === to.ballId ? 0 : 1)
  let nearest = at
  let least = Number.POSITIVE_INFINITY
  for (let index = at; index >= 0; index--) {
    const { spot, standingBefore, decision } = throws[index]
    if (spot.lane !== lane || standingBefore !== FULL_RACK) continue
    const distance = distanceBetween({ ...decision, ballIndex: ballOf(decision) }, { ...to, ballIndex: 0 })
    if (distance >= least) continue
    nearest = index
    least = distance
  }
  return nearest
}
