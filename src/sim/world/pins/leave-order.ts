import { countPins, FULL_RACK, hasGap, listPins } from './leaves.js'
import { SPOT_LEFT_METRES } from './spots.js'

/** Widest empty stretch between pins that are neighbours from left to right. */
function widestGap(mask: number): number {
  const places = listPins(mask)
    .map((pin) => SPOT_LEFT_METRES[pin - 1]!)
    .sort((first, second) => first - second)
  return places.slice(1).reduce((widest, place, index) => Math.max(widest, place - places[index]!), 0)
}

const outermost = (mask: number): number =>
  listPins(mask).reduce((farthest, pin) => Math.max(farthest, Math.abs(SPOT_LEFT_METRES[pin - 1]!)), 0)

interface Hardness {
  readonly mask: number
  /** 0 for pins in one group; otherwise how wide the gap is. */
  readonly gap: number
  readonly pins: number
  readonly outermost: number
}

const hardness = (mask: number): Hardness => ({
  mask,
  gap: mask !== 0 && hasGap(mask) ? 1 + widestGap(mask) : 0,
  pins: countPins(mask),
  outermost: outermost(mask),
})

const RANK: Uint16Array = (() => {
  const ordered = Array.from({ length: FULL_RACK + 1 }, (_, mask) => hardness(mask)).sort(
    (first, second) =>
      first.gap - second.gap ||
      first.pins - second.pins ||
      first.outermost - second.outermost ||
      first.mask - second.mask,
  )
  const ranks = new Uint16Array(FULL_RACK + 1)
  for (const [rank, { mask }] of ordered.entries()) ranks[mask] = rank
  return ranks
})()

/**
 * Place of a leave in one order from best to worst, 0 for the strike: pins in one group before pins with a gap, a
 * narrow gap before a wide one, few pins before many, middle before corner. The same for every bowler.
 */
export const leaveRank = (mask: number): number => RANK[mask]!
