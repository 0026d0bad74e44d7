import { exponential } from '../../exact-math.js'
import { BOARD_WIDTH_METRES, boardToMetres } from '../../units.js'

const FIRST_BOARD = -4
const LAST_BOARD = 44
const BOARD_STEP = 0.125
const BOARDS = (LAST_BOARD - FIRST_BOARD) / BOARD_STEP + 1
/** Tangents of the entry angle, about -2° to 8°. */
const FIRST_TANGENT = -0.035
const TANGENT_STEP = 0.0175
const TANGENTS = 11
const SPREAD_STEP = 0.25
const SPREADS = 17
const REACH = 3.5

/**
 * Expected worth of a first ball by where it crosses the headpin's row (board from the bowler's side), how steeply,
 * and how far that board is still uncertain (standard deviation in boards), so that a whole cloud of misses costs
 * one look-up.
 */
export interface ValueTable {
  readonly worth: Float64Array
}

/** Exact entries that a table is made from, tangent by tangent, board by board. */
export const ENTRIES = TANGENTS * BOARDS

/** Visits every exact entry of a table: its place in it, offset right of the headpin in metres, tangent of the angle. */
export function visitEntries(visit: (place: number, offsetMetres: number, tangent: number) => void): void {
  for (let tangent = 0; tangent < TANGENTS; tangent++)
    for (let board = 0; board < BOARDS; board++)
      visit(
        tangent * BOARDS + board,
        boardToMetres(20) - boardToMetres(FIRST_BOARD + board * BOARD_STEP),
        FIRST_TANGENT + tangent * TANGENT_STEP,
      )
}

/** A table from the worth of every exact entry, smeared by Gaussian spreads of 0 to 4 boards. */
export function buildValueTable(exact: Float64Array): ValueTable {
  const worth = new Float64Array(SPREADS * ENTRIES)
  for (let spread = 0; spread < SPREADS; spread++)
    for (let tangent = 0; tangent < TANGENTS; tangent++)
      convolve(exact, tangent * BOARDS, KERNELS[spread], worth, spread * ENTRIES + tangent * BOARDS)
  return { worth }
}

function gaussianKernel(sigmaSteps: number): Float64Array {
  const half = Math.ceil(REACH * sigmaSteps)
  const kernel = new Float64Array(2 * half + 1)
  let sum = 0
  for (let k = -half; k <= half; k++) {
    kernel[k + half] = sigmaSteps > 0 ? exponential(-(k * k) / (2 * sigmaSteps * sigmaSteps)) : 1
    sum += kernel[k + half]
  }
  for (let k = 0; k < kernel.length; k++) kernel[k] /= sum
  return kernel
}

const KERNELS = Array.from({ length: SPREADS }, (_, spread) => gaussianKernel((spread * SPREAD_STEP) / BOARD_STEP))
const widest = (KERNELS[SPREADS - 1].length - 1) / 2
const padded = new Float64Array(BOARDS + 2 * widest)

/** Values beyond the borders are those at the borders. */
function convolve(exact: Float64Array, from: number, kernel: Float64Array, into: Float64Array, base: number): void {
  padded.fill(exact[from], 0, widest)
  padded.set(exact.subarray(from, from + BOARDS), widest)
  padded.fill(exact[from + BOARDS - 1], widest + BOARDS)
  const half = (kernel.length - 1) / 2
  for (let board = 0; board < BOARDS; board++) {
    const middle = board + widest
    let sum = kernel[half] * padded[middle]
    for (let k = 1; k <= half; k++) sum += kernel[half + k] * (padded[middle - k] + padded[middle + k])
    into[base + board] = sum
  }
}

/**
 * Worth at an entry place (metres from the bowler's edge), tangent and spread of the board (metres, one standard
 * deviation), linear between the table's nodes and held at its borders.
 */
export function lookUpWorth(table: ValueTable, lateralMetres: number, tangent: number, spreadMetres: number): number {
  const b = clamp((lateralMetres / BOARD_WIDTH_METRES + 0.5 - FIRST_BOARD) / BOARD_STEP, BOARDS - 1)
  const t = clamp((tangent - FIRST_TANGENT) / TANGENT_STEP, TANGENTS - 1)
  const s = clamp(spreadMetres / (BOARD_WIDTH_METRES * SPREAD_STEP), SPREADS - 1)
  const b0 = b < BOARDS - 1 ? b | 0 : BOARDS - 2
  const t0 = t < TANGENTS - 1 ? t | 0 : TANGENTS - 2
  const s0 = s < SPREADS - 1 ? s | 0 : SPREADS - 2
  const fb = b - b0
  const ft = t - t0
  const fs = s - s0
  const near = (s0 * TANGENTS + t0) * BOARDS + b0
  const far = near + TANGENTS * BOARDS
  const w = table.worth
  const low =
    (1 - ft) * ((1 - fb) * w[near] + fb * w[near + 1]) + ft * ((1 - fb) * w[near + BOARDS] + fb * w[near + BOARDS + 1])
  if (fs === 0) return low
  const high =
    (1 - ft) * ((1 - fb) * w[far] + fb * w[far + 1]) + ft * ((1 - fb) * w[far + BOARDS] + fb * w[far + BOARDS + 1])
  return (1 - fs) * low + fs * high
}

function clamp(value: number, most: number): number {
  return value < 0 ? 0 : Math.min(value, most)
}
