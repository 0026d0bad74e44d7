import { FEET_BOARDS, isWithin, TARGET_BOARDS } from '../../world/bowler/aim-boards.js'
import type { Aim } from '../../world/bowler/release.js'

/** A board of feet and half a board of target either way, in half boards. */
const FEET = [-1, -0.5, 0, 0.5, 1] as const
const TARGET = [-0.5, 0, 0.5] as const

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
