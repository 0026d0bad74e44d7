import { FULL_RACK, mirrorMask } from '../../world/pins/leaves.js'
import { DECK_HALF_WIDTH_METRES } from '../../world/pins/spots.js'
import { type CarryCells, decodeCells } from './carry-format.js'
import {
  CARRY_ANGLES_RADIANS,
  CARRY_CELLS,
  CARRY_OFFSETS_METRES,
  CARRY_SPEEDS_METRES_PER_SECOND,
  CARRY_THROWS,
  carryCell,
} from './carry-grid.js'
import { CARRY_CELLS_TEXT } from './carry-table-data.js'

let cells: CarryCells | undefined

const OFFSETS = Float64Array.from(CARRY_OFFSETS_METRES)
const ANGLES = Float64Array.from(CARRY_ANGLES_RADIANS)
const SPEEDS = Float64Array.from(CARRY_SPEEDS_METRES_PER_SECOND)
const MIRROR = Uint16Array.from({ length: FULL_RACK + 1 }, (_, mask) => mirrorMask(mask))

/** Index of the last grid value not above `value`, within the grid, leaving room for the next. */
function below(grid: Float64Array, value: number): number {
  let low = 0
  let high = grid.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (grid[middle]! <= value) low = middle
    else high = middle
  }
  return low
}

/** How far `value` lies between a grid value and the next, 0 to 1; held at the grid's ends. */
function share(grid: Float64Array, index: number, value: number): number {
  const along = (value - grid[index]!) / (grid[index + 1]! - grid[index]!)
  return Math.max(0, Math.min(1, along))
}

/** Leaves and their chances, which add up to 1; a leave may come more than once. Only the first `count` entries hold. */
export interface CarryDistribution {
  count: number
  readonly mask: Uint16Array
  readonly chance: Float64Array
}

const CORNERS = 8

/** An empty distribution to read into, large enough for any throw. */
export const newCarryDistribution = (): CarryDistribution => ({
  count: 0,
  mask: new Uint16Array(CORNERS * CARRY_THROWS),
  chance: new Float64Array(CORNERS * CARRY_THROWS),
})

/**
 * Chances of every leave after a ball at a full rack, written into `out`. Interpolated between the table's cells;
 * angles beyond 8 degrees and speeds outside its range count as the nearest, a ball moving to the right as the mirror
 * image of one moving to the left. Allocates nothing.
 */
export function carryDistribution(
  offsetMetres: number,
  angleRadians: number,
  speedMetresPerSecond: number,
  out: CarryDistribution,
): void {
  if (Math.abs(offsetMetres) > DECK_HALF_WIDTH_METRES) {
    out.count = 1
    out.mask[0] = FULL_RACK
    out.chance[0] = 1
    return
  }
  cells ??= decodeCells(CARRY_CELLS_TEXT, CARRY_CELLS)
  const mirrored = angleRadians < 0
  const offset = mirrored ? -offsetMetres : offsetMetres
  const angle = Math.abs(angleRadians)
  const o = below(OFFSETS, offset)
  const a = below(ANGLES, angle)
  const s = below(SPEEDS, speedMetresPerSecond)
  const offsetShare = share(OFFSETS, o, offset)
  const angleShare = share(ANGLES, a, angle)
  const speedShare = share(SPEEDS, s, speedMetresPerSecond)
  out.count = 0
  for (let corner = 0; corner < CORNERS; corner++) {
    const weight =
      (corner & 1 ? offsetShare : 1 - offsetShare) *
      (corner & 2 ? angleShare : 1 - angleShare) *
      (corner & 4 ? speedShare : 1 - speedShare)
    if (weight === 0) continue
    const cell = carryCell(s + (corner >> 2), a + ((corner >> 1) & 1), o + (corner & 1))
    for (let leave = cells.start[cell]!; leave < cells.start[cell + 1]!; leave++) {
      const mask = cells.mask[leave]!
      out.mask[out.count] = mirrored ? MIRROR[mask]! : mask
      out.chance[out.count] = weight * cells.probability[leave]!
      out.count++
    }
  }
}
