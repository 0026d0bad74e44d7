import { boardToMetres } from '../../units.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { carryDistribution, newCarryDistribution } from '../carry/carry-table.js'

/** How likely one leave is, by the board a ball crosses the headpin's row on and the tangent of its angle. */
export interface LeaveChances {
  readonly at: (entryBoard: number, tangent: number) => number
}

const FIRST_BOARD = 0
const BOARD_STEP = 0.5
const BOARDS = 81
const FIRST_TANGENT = -0.035
const TANGENT_STEP = 0.035
const TANGENTS = 6
const HEADPIN_BOARD = 20
/** Share of the chance that goes to leaves the table has never seen. */
const UNKNOWN_SHARE = 0.02

const read = newCarryDistribution()
const chances = new Float64Array(FULL_RACK + 1)

/** Weights of entries 0, ±½, ±1 and ±1½ boards away: a rolled throw stands for a blur of them (see Blur.entryBoards). */
const NEARBY = [0.3, 0.22, 0.1, 0.03] as const

/**
 * The chance of leaving `mask` (bowler's own side) from a full rack, tabulated around the lane for one throw's speed.
 * Chances over all leaves sum to 1 at every entry.
 */
export function leaveChances(mask: number, speedMetresPerSecond: number): LeaveChances {
  const table = new Float64Array(TANGENTS * BOARDS)
  for (let t = 0; t < TANGENTS; t++)
    for (let b = 0; b < BOARDS; b++) {
      const offset = boardToMetres(HEADPIN_BOARD) - boardToMetres(FIRST_BOARD + b * BOARD_STEP)
      carryDistribution(offset, FIRST_TANGENT + t * TANGENT_STEP, speedMetresPerSecond, read)
      table[t * BOARDS + b] = flattenedChance(mask)
    }
  const blurred = blurAcross(table)
  return { at: (entryBoard, tangent) => lookUp(blurred, entryBoard, tangent) }
}

function blurAcross(table: Float64Array): Float64Array {
  const blurred = new Float64Array(table.length)
  for (let t = 0; t < TANGENTS; t++)
    for (let b = 0; b < BOARDS; b++) {
      let sum = NEARBY[0] * table[t * BOARDS + b]
      for (let away = 1; away < NEARBY.length; away++)
        sum +=
          NEARBY[away] *
          (table[t * BOARDS + Math.max(0, b - away)] + table[t * BOARDS + Math.min(BOARDS - 1, b + away)])
      blurred[t * BOARDS + b] = sum
    }
  return blurred
}

/** The leave's chance after taking square roots of all chances, since the table is a sample and racks differ. */
function flattenedChance(mask: number): number {
  chances.fill(0)
  for (let k = 0; k < read.count; k++) chances[read.mask[k]] += read.chance[k]
  let sum = 0
  for (let leave = 0; leave < chances.length; leave++) if (chances[leave] > 0) sum += Math.sqrt(chances[leave])
  const known = sum > 0 ? Math.sqrt(chances[mask]) / sum : 0
  return (1 - UNKNOWN_SHARE) * known + UNKNOWN_SHARE / chances.length
}

function lookUp(table: Float64Array, entryBoard: number, tangent: number): number {
  const b = clamp((entryBoard - FIRST_BOARD) / BOARD_STEP, BOARDS - 1)
  const t = clamp((tangent - FIRST_TANGENT) / TANGENT_STEP, TANGENTS - 1)
  const b0 = Math.min(BOARDS - 2, Math.floor(b))
  const t0 = Math.min(TANGENTS - 2, Math.floor(t))
  const at = t0 * BOARDS + b0
  const near = table[at] + (table[at + 1] - table[at]) * (b - b0)
  const far = table[at + BOARDS] + (table[at + BOARDS + 1] - table[at + BOARDS]) * (b - b0)
  return near + (far - near) * (t - t0)
}

const clamp = (value: number, most: number): number => Math.min(Math.max(value, 0), most)
