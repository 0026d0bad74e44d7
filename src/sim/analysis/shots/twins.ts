import { FEET_BOARDS } from '../../world/bowler/aim-boards.js'
import type { Aim } from '../../world/bowler/release.js'

/** Nobody's slide is surer than this: the one difference that is forgiven. */
const SLIDE_BOARDS = 0.5

/** The same throw from half a board to either side, the target held. */
export function besideOnTheApproach<T extends { readonly aim: Aim }>(thrown: T): T[] {
  const { aim } = thrown
  return [-SLIDE_BOARDS, SLIDE_BOARDS]
    .map((off) => aim.feetBoard + off)
    .filter((feetBoard) => feetBoard >= FEET_BOARDS[0] && feetBoard <= FEET_BOARDS[1])
    .map((feetBoard) => ({ ...thrown, aim: { ...aim, feetBoard } }))
}
