import type { Aim } from '../bowler/release.js'
import type { Contact, Observation } from './types.js'

type Move = readonly [feet: number, target: number]

/** Move of feet and target, in boards away from the bowler's own gutter, that the rule of thumb answers a call with. */
const MOVES: Readonly<Record<Exclude<Contact, 'gutter'>, Move>> = {
  missed: [-2, -1],
  light: [-1, -0.5],
  pocket: [0, 0],
  high: [1, 0.5],
  nose: [2, 1],
  crossover: [3, 2],
  past: [4, 2],
}

const OFF_THE_OWN_GUTTER: Move = [-1, 1]
const OFF_THE_FAR_GUTTER: Move = [5, 3]
/** A path that never came nearer to the bowler's own gutter than this went into the other one. */
const OWN_GUTTER_BOARD = 3

export const FEET_BOARDS: readonly [number, number] = [8, 46]
export const TARGET_BOARDS: readonly [number, number] = [2, 30]

/** A ball that crossed the arrows further than this from its mark was a bad throw, and tells nothing of the lane. */
const ON_THE_MARK_BOARDS = 1

type Seen = Pick<Observation, 'arrowsBoard' | 'contact' | 'breakpointBoard'>

/**
 * The aim moved in the direction of the miss, "2 and 1", if the ball rolled over its mark; else the same aim again.
 * As the trade teaches it; common practice, no source.
 */
export function followTheMiss(aim: Aim, seen: Seen): Aim {
  if (Math.abs(seen.arrowsBoard - aim.targetBoard) > ON_THE_MARK_BOARDS) return aim
  const [feet, target] = answerTo(seen)
  return {
    ...aim,
    feetBoard: within(aim.feetBoard + feet, FEET_BOARDS),
    targetBoard: within(aim.targetBoard + target, TARGET_BOARDS),
  }
}

function answerTo({ contact, breakpointBoard }: Seen): Move {
  if (contact !== 'gutter') return MOVES[contact]
  return breakpointBoard <= OWN_GUTTER_BOARD ? OFF_THE_OWN_GUTTER : OFF_THE_FAR_GUTTER
}

function within(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value))
}
