import { exponential } from '../../exact-math.js'
import { BOARD_WIDTH_METRES, boardToMetres } from '../../units.js'
import { HEADPIN_LATERAL_METRES } from '../../world/lane/geometry.js'
import { CARRY_SPEEDS_METRES_PER_SECOND } from '../carry/carry-grid.js'

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

/** Speeds at the pins: those of the carry table, between which chances go linearly, so that nothing is lost. */
const SPEEDS = Float64Array.from(CARRY_SPEEDS_METRES_PER_SECOND)
/** Speeds that exact entries are given for, in m/s, rising. */
export const ENTRY_SPEEDS_METRES_PER_SECOND: readonly number[] = CARRY_SPEEDS_METRES_PER_SECOND

/**
 * Expected worth of a first ball by where it crosses the headpin's row (board from the bowler's side), how steeply, how
 * far that board is still uncertain (standard deviation in boards), so that a whole cloud of misses costs one look-up, and
 * how fast it is by then. The speeds of one entry lie side by side.
 */
export interface ValueTable {
  readonly worth: Float64Array
}

/** Exact entries that a table is made from at each speed, tangent by tangent, board by board. */
export const ENTRIES = TANGENTS * BOARDS

/** Visits every exact entry of one speed: its place, offset right of the headpin in metres, tangent of the angle. */
export function visitEntries(visit: (place: number, offsetMetres: number, tangent: number) => void): void {
  for (let tangent = 0; tangent < TANGENTS; tangent++)
    for (let board = 0; board < BOARDS; board++)
      visit(
        tangent * BOARDS + board,
        HEADPIN_LATERAL_METRES - boardToMetres(FIRST_BOARD + board * BOARD_STEP),
        FIRST_TANGENT + tangent * TANGENT_STEP,
      )
}

/**
 * A table from the worth of every exact entry, smeared by Gaussian spreads of 0 to 4 boards.
 * @param exact one array of ENTRIES figures for each of ENTRY_SPEEDS_METRES_PER_SECOND
 */
export function buildValueTable(exact: readonly Float64Array[]): ValueTable {
  const count = SPEEDS.length
  const worth = new Float64Array(SPREADS * ENTRIES * count)
  for (let spread = 0; spread < SPREADS; spread++)
    for (let tangent = 0; tangent < TANGENTS; tangent++)
      for (let speed = 0; speed < count; speed++)
        convolve(
          exact[speed],
          tangent * BOARDS,
          KERNELS[spread],
          worth,
          (spread * ENTRIES + tangent * BOARDS) * count + speed,
        )
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

/** Values beyond the borders are those at the borders; written at every so many places as there are speeds. Hot: five arguments. */
function convolve(exact: Float64Array, from: number, kernel: Float64Array, into: Float64Array, base: number): void {
  padded.fill(exact[from], 0, widest)
  padded.set(exact.subarray(from, from + BOARDS), widest)
  padded.fill(exact[from + BOARDS - 1], widest + BOARDS)
  const half = (kernel.length - 1) / 2
  for (let board = 0; board < BOARDS; board++) {
    const middle = board + widest
    let sum = kernel[half] * padded[middle]
    for (let k = 1; k <= half; k++) sum += kernel[half + k] * (padded[middle - k] + padded[middle + k])
    into[base + board * SPEEDS.length] = sum
  }
}

/**
 * Worth at an entry place (metres from the bowler's edge), tangent, spread of the board (metres, one standard deviation) and
 * speed (m/s), linear between the table's nodes and held at its borders. The hottest look-up there is: five arguments.
 */
export function lookUpWorth(
  table: ValueTable,
  lateralMetres: number,
  tangent: number,
  spreadMetres: number,
  speedMetresPerSecond: number,
): number {
  const b = clamp((lateralMetres / BOARD_WIDTH_METRES + 0.5 - FIRST_BOARD) / BOARD_STEP, BOARDS - 1)
  const t = clamp((tangent - FIRST_TANGENT) / TANGENT_STEP, TANGENTS - 1)
  const s = clamp(spreadMetres / (BOARD_WIDTH_METRES * SPREAD_STEP), SPREADS - 1)
  const count = SPEEDS.length
  let v0 = 0
  while (v0 < count - 2 && speedMetresPerSecond >= SPEEDS[v0 + 1]) v0++
  const fv = clamp((speedMetresPerSecond - SPEEDS[v0]) / (SPEEDS[v0 + 1] - SPEEDS[v0]), 1)
  const b0 = b < BOARDS - 1 ? b | 0 : BOARDS - 2
  const t0 = t < TANGENTS - 1 ? t | 0 : TANGENTS - 2
  const s0 = s < SPREADS - 1 ? s | 0 : SPREADS - 2
  const fb = b - b0
  const ft = t - t0
  const fs = s - s0
  const near = ((s0 * TANGENTS + t0) * BOARDS + b0) * count + v0
  const far = near + TANGENTS * BOARDS * count
  const w = table.worth
  const low = (1 - ft) * along(w, near, fb, fv) + ft * along(w, near + BOARDS * count, fb, fv)
  if (fs === 0) return low
  const high = (1 - ft) * along(w, far, fb, fv) + ft * along(w, far + BOARDS * count, fb, fv)
  return (1 - fs) * low + fs * high
}

/** Between two neighbouring boards and two neighbouring speeds. */
function along(w: Float64Array, at: number, fb: number, fv: number): number {
  const next = at + SPEEDS.length
  return (1 - fb) * ((1 - fv) * w[at] + fv * w[at + 1]) + fb * ((1 - fv) * w[next] + fv * w[next + 1])
}

/** Figures of the exact entries, `figures` a piece, between which `addFiguresAt` reads. */
export interface EntryFigures {
  readonly figures: number
  /** One array for each speed. */
  readonly bySpeed: readonly Float64Array[]
}

/** Adds the figures at an entry to `into`, linear between the entries and held at the borders. */
export function addFiguresAt(
  { figures, bySpeed }: EntryFigures,
  entry: { readonly lateralMetres: number; readonly tangent: number; readonly speedMetresPerSecond: number },
  into: Float64Array,
): void {
  const b = clamp((entry.lateralMetres / BOARD_WIDTH_METRES + 0.5 - FIRST_BOARD) / BOARD_STEP, BOARDS - 1)
  const t = clamp((entry.tangent - FIRST_TANGENT) / TANGENT_STEP, TANGENTS - 1)
  const b0 = Math.min(BOARDS - 2, Math.floor(b))
  const t0 = Math.min(TANGENTS - 2, Math.floor(t))
  let v0 = 0
  while (v0 < SPEEDS.length - 2 && entry.speedMetresPerSecond >= SPEEDS[v0 + 1]) v0++
  const fv = clamp((entry.speedMetresPerSecond - SPEEDS[v0]) / (SPEEDS[v0 + 1] - SPEEDS[v0]), 1)
  for (let corner = 0; corner < 8; corner++) {
    const [board, tangent, speed] = [corner & 1, (corner >> 1) & 1, corner >> 2]
    const weight = (board ? b - b0 : 1 - b + b0) * (tangent ? t - t0 : 1 - t + t0) * (speed ? fv : 1 - fv)
    if (weight === 0) continue
    const from = ((t0 + tangent) * BOARDS + b0 + board) * figures
    for (let k = 0; k < figures; k++) into[k] += weight * bySpeed[v0 + speed][from + k]
  }
}

function clamp(value: number, most: number): number {
  return value < 0 ? 0 : Math.min(value, most)
}
