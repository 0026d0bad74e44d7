import { normalDistribution } from '../../exact-math.js'
import { metresToBoard, metresToFeet } from '../../units.js'
import type { RollOutcome } from '../../world/ball/launch.js'
import type { LeaveChances } from './leave-chances.js'
import { type Cell, chanceWithin, type SeenCells } from './seen-cells.js'

/**
 * Standard deviations of what one simulated throw leaves open: the deliveries between the few that are rolled, and oil
 * of a shape that no hypothesis has. Tuned so that intervals cover as often as they say (study belief-calibration).
 */
export interface Blur {
  readonly breakpointBoards: number
  readonly breakpointFeet: number
  readonly entryBoards: number
}

const RIGHT_EDGE_BOARD = 0.5
const LEFT_EDGE_BOARD = 39.5

/** Chance that a throw which rolled out so is shown as what was seen at the breakpoint, at the pins and as the leave. */
export function chanceOfSeen(seen: SeenCells, leave: LeaveChances | null, rolled: RollOutcome, blur: Blur): number {
  const outermost = metresToBoard(rolled.breakpointLateralMetres)
  const entry = metresToBoard(rolled.lateralAtPinsMetres)
  const breakpoint =
    chanceWithin(seen.breakpointBoard, outermost, blur.breakpointBoards) *
    chanceWithin(seen.breakpointFeet, metresToFeet(rolled.breakpointMetres), blur.breakpointFeet)
  if (breakpoint === 0) return 0
  const onLane =
    normalDistribution((outermost - RIGHT_EDGE_BOARD) / blur.breakpointBoards) *
    normalDistribution((LEFT_EDGE_BOARD - entry) / blur.entryBoards)
  if (seen.entryBoard === null) return breakpoint * (1 - onLane)
  const called = breakpoint * onLane * chanceWithin(seen.entryBoard, entry, blur.entryBoards)
  if (leave === null || called === 0) return called
  return called * leave.at(within(seen.entryBoard, entry), rolled.tangentAtPins)
}

function within(cell: Cell, value: number): number {
  return Math.min(Math.max(value, cell.from), cell.to)
}
