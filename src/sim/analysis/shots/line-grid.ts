import { BOARD_WIDTH_METRES, boardToMetres } from '../../units.js'

/**
 * The lines that are searched: laydown boards by whole boards and, at each, targets at the arrows by half boards
 * relative to the laydown, so that a parallel miss moves along one axis and a pulled or pushed ball along the other.
 * The grid reaches beyond the lines that are offered, so that the misses from the outermost ones are still on it.
 */
export const FIRST_LAYDOWN_BOARD = 1
export const LAYDOWNS = 39
export const FIRST_SWING_BOARDS = -15
export const SWING_STEP_BOARDS = 0.5
export const SWINGS = 41
export const LINES = LAYDOWNS * SWINGS

/** The lines that are offered. */
export const OFFERED_LAYDOWN_BOARDS: readonly [number, number] = [4, 34]
export const OFFERED_SWING_BOARDS: readonly [number, number] = [-12, 2]
export const OFFERED_TARGET_BOARDS: readonly [number, number] = [2, 30]

const laydownBoardOf = (laydown: number): number => FIRST_LAYDOWN_BOARD + laydown
const swingBoardsOf = (swing: number): number => FIRST_SWING_BOARDS + swing * SWING_STEP_BOARDS
export const laydownMetresOf = (laydown: number): number => boardToMetres(laydownBoardOf(laydown))
export const swingMetresOf = (swing: number): number => swingBoardsOf(swing) * BOARD_WIDTH_METRES

/** One step of the grid's two axes, in metres. */
export const LAYDOWN_STEP_METRES = BOARD_WIDTH_METRES
export const SWING_STEP_METRES = SWING_STEP_BOARDS * BOARD_WIDTH_METRES
