import { metresToBoards } from '../../units.js'
import type { BlockSetup } from '../../world/block/types.js'
import { isWithin } from '../../world/bowler/aim-boards.js'
import type { Aim } from '../../world/bowler/release.js'
import { type LineSearch, SPEED_STEPS } from '../shots/best-line.js'
import { OFFERED_LAYDOWN_BOARDS, OFFERED_SWING_BOARDS, OFFERED_TARGET_BOARDS } from '../shots/line-grid.js'

/** How far something can be missed, in boards to either side; more boards is away from the bowler's own gutter. */
export interface Room {
  readonly outBoards: number
  readonly inBoards: number
}

/** The best line from one place of the feet. */
export interface LineRoom {
  readonly aim: Aim
  readonly laydownBoard: number
  /** Expected game pins of a throw against the bowler's average first ball, the bowler's misses included. */
  readonly worth: number
  /** How far the target can be off before the line is worth less than the price. */
  readonly target: Room
  /** The same for feet and target moved together. */
  readonly parallel: Room
}

/**
 * The price that room is counted against, the same for every line of a lane: 0, which is the bowler's average first ball, where any
 * line beats it; else what the second-best place for the feet is worth, and where there is but one, nothing.
 *
 * @param worths of the best line from every place of the feet
 */
export function roomPrice(worths: readonly number[]): number {
  const [best = 0, second = best] = [...worths].sort((a, b) => b - a)
  return best > 0 ? 0 : second
}

const STEP = 0.5
const NO_ROOM: Room = { outBoards: 0, inBoards: 0 }
/** Room is told to a tenth of a board. */
const ROOM_STEPS_A_BOARD = 10

/**
 * For every whole board of the feet the best target and speed with one ball, what it is worth and how far it can be missed before it is
 * worth less than one price for all: a line that is worth more may be missed further, and one that is worth less has no room.
 */
export function lineRooms(
  { bowler }: Pick<BlockSetup, 'bowler'>,
  { worthOf }: Pick<LineSearch, 'worthOf'>,
  ball: number,
): LineRoom[] {
  const slideBoards = metresToBoards(bowler.slideToLaydownMetres)
  const first = Math.ceil(OFFERED_LAYDOWN_BOARDS[0] + slideBoards)
  const last = Math.floor(OFFERED_LAYDOWN_BOARDS[1] + slideBoards)
  const lines = Array.from({ length: last - first + 1 }, (_, step) => {
    const aim = bestFrom(first + step, slideBoards, (one) => worthOf(ball, one))
    return { aim, worth: worthOf(ball, aim) }
  })
  const price = roomPrice(lines.map(({ worth }) => worth))
  return lines.map(({ aim, worth }) => {
    const isAsGood = (feet: number, target: number): boolean =>
      isOffered(aim.feetBoard + feet - slideBoards, aim.targetBoard + target) &&
      worthOf(ball, { ...aim, feetBoard: aim.feetBoard + feet, targetBoard: aim.targetBoard + target }) >= price
    return {
      aim,
      laydownBoard: aim.feetBoard - slideBoards,
      worth,
      target: worth < price ? NO_ROOM : roomWhere((off) => isAsGood(0, off)),
      parallel: worth < price ? NO_ROOM : roomWhere((off) => isAsGood(off, off)),
    }
  })
}

function bestFrom(feetBoard: number, slideBoards: number, worthOf: (aim: Aim) => number): Aim {
  const laydown = feetBoard - slideBoards
  const from = Math.max(OFFERED_TARGET_BOARDS[0], Math.ceil((laydown + OFFERED_SWING_BOARDS[0]) / STEP) * STEP)
  const to = Math.min(OFFERED_TARGET_BOARDS[1], laydown + OFFERED_SWING_BOARDS[1])
  let best: Aim = { feetBoard, targetBoard: from, speedStep: 0 }
  let most = -Infinity
  for (let targetBoard = from; targetBoard <= to; targetBoard += STEP) {
    for (const speedStep of SPEED_STEPS) {
      const worth = worthOf({ feetBoard, targetBoard, speedStep })
      if (worth > most) [best, most] = [{ feetBoard, targetBoard, speedStep }, worth]
    }
  }
  return best
}

function isOffered(laydown: number, target: number): boolean {
  return isWithin(laydown, OFFERED_LAYDOWN_BOARDS) && isWithin(target, OFFERED_TARGET_BOARDS)
}

/** The unbroken stretch around no miss at all in which a line stays as good. */
function roomWhere(isAsGood: (off: number) => boolean): Room {
  const reach = (side: -1 | 1): number => {
    let steps = 0
    while (isAsGood((side * (steps + 1)) / ROOM_STEPS_A_BOARD)) steps++
    return steps / ROOM_STEPS_A_BOARD
  }
  return { outBoards: reach(-1), inBoards: reach(1) }
}
