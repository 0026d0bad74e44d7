import type { Aim } from '../bowler/release.js'
import type { Contact } from './types.js'

/** Move of feet and target, in boards away from the bowler's own gutter, that the rule of thumb answers a call with. */
const MOVES: Readonly<Record<Contact, readonly [feet: number, target: number]>> = {
  gutter: [-1, 1],
  missed: [-2, -1],
  light: [-1, -0.5],
  pocket: [0, 0],
  high: [1, 0.5],
  nose: [2, 1],
  crossover: [3, 2],
  past: [4, 2],
}

export const FEET_BOARDS: readonly [number, number] = [8, 46]
export const TARGET_BOARDS: readonly [number, number] = [2, 30]

/** The aim moved in the direction of the miss, "2 and 1", as the trade teaches it; common practice, no source. */
export function followTheMiss(aim: Aim, contact: Contact): Aim {
  const [feet, target] = MOVES[contact]
  return {
    ...aim,
    feetBoard: within(aim.feetBoard + feet, FEET_BOARDS),
    targetBoard: within(aim.targetBoard + target, TARGET_BOARDS),
  }
}

function within(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value))
}
