import { BOARD_WIDTH_METRES, boardToMetres } from '../units.js'

/**
 * The lines that are searched: laydown boards by whole boards and, at each, targets at the arrows by half boards
 * relative to the laydown, so that a parallel miss moves along one axis and a pulled or pushed ball along the other.
 */
export const FIRST_LAYDOWN_BOARD = 3
export const LAYDOWNS = 35
export const FIRST_SWING_BOARDS = -14
export const SWING_STEP_BOARDS = 0.5
export const SWINGS = 35
export const LINES = LAYDOWNS * SWINGS

export const FIRST_TARGET_BOARD = 2
export const LAST_TARGET_BOARD = 30

export const laydownBoardOf = (laydown: number): number => FIRST_LAYDOWN_BOARD + laydown
export const swingBoardsOf = (swing: number): number => FIRST_SWING_BOARDS + swing * SWING_STEP_BOARDS
export const laydownMetresOf = (laydown: number): number => boardToMetres(laydownBoardOf(laydown))
export const swingMetresOf = (swing: number): number => swingBoardsOf(swing) * BOARD_WIDTH_METRES

/** One step of the grid's two axes, in metres. */
export const LAYDOWN_STEP_METRES = BOARD_WIDTH_METRES
export const SWING_STEP_METRES = SWING_STEP_BOARDS * BOARD_WIDTH_METRES

/** False for lines that no bowler of sense aims: the target off the lane's playable part. */
export function isPlayable(laydown: number, swing: number): boolean {
  const target = laydownBoardOf(laydown) + swingBoardsOf(swing)
  return target >= FIRST_TARGET_BOARD && target <= LAST_TARGET_BOARD
}
