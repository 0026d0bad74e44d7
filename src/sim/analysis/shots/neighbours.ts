import { FEET_BOARDS, TARGET_BOARDS } from '../../world/block/follow-the-miss.js'
import type { Aim } from '../../world/bowler/release.js'

/** A board of feet and half a board of target either way, in half boards. */
const FEET = [-1, -0.5, 0, 0.5, 1] as const
const TARGET = [-0.5, 0, 0.5] as const

/**
 * A straight line through both ends comes to the pins, four times as far as the arrows, this far off at the most and is
 * still taken for the same: a board of feet at a held target would be three boards there, which every bowler sees.
 */
const ALIKE_AT_PINS_BOARDS = 1.5
const PINS_PER_ARROWS = 4

/** The aims that a bowler cannot tell from this one, on the approach or by what comes of them; itself among them. */
export function indistinguishableFrom(aim: Aim): Aim[] {
  return neighboursOf(aim).filter(({ feetBoard, targetBoard }) => {
    const feet = feetBoard - aim.feetBoard
    const target = targetBoard - aim.targetBoard
    return Math.abs(PINS_PER_ARROWS * target - (PINS_PER_ARROWS - 1) * feet) <= ALIKE_AT_PINS_BOARDS
  })
}

/** The aims within a board of feet and half a board of target, the aim itself first. */
export function neighboursOf(aim: Aim): Aim[] {
  const others = FEET.flatMap((feet) =>
    TARGET.map((target) => ({ ...aim, feetBoard: aim.feetBoard + feet, targetBoard: aim.targetBoard + target })),
  ).filter(
    ({ feetBoard, targetBoard }) =>
      (feetBoard !== aim.feetBoard || targetBoard !== aim.targetBoard) &&
      isWithin(feetBoard, FEET_BOARDS) &&
      isWithin(targetBoard, TARGET_BOARDS),
  )
  return [aim, ...others]
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high
}
