import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../lane/film.js'

/** For each film row, how many rows (half feet) a step that starts in its middle may take. */
export type StepTable = Uint8Array

/** A kink of the film along the lane, in micrometres, above which a step must end on every row. */
const ROUGH_MICRONS = 0.06
const SMOOTH_STEP_ROWS = 2
/** Boards looked at: the film varies smoothly from board to board. */
const LOOKED_AT_BOARD_STEP = 2

/**
 * Chooses steps of one foot where the film changes evenly along the lane and of half a foot where it does not,
 * such as at the end of the oil. Build it anew whenever the film has changed.
 */
export function buildStepTable(film: OilFilm): StepTable {
  const steps = new Uint8Array(FILM_ROWS).fill(1)
  for (let row = 0; row + SMOOTH_STEP_ROWS < FILM_ROWS; row++) {
    if (!isRough(film.microns, row) && !isRough(film.microns, row + 1) && !isRough(film.microns, row + 2)) {
      steps[row] = SMOOTH_STEP_ROWS
    }
  }
  return steps
}

/** Whether the film kinks at the middle of a row. */
function isRough(microns: Float64Array, row: number): boolean {
  if (row === 0 || row === FILM_ROWS - 1) return false
  const start = row * FILM_BOARDS
  for (let column = 0; column < FILM_BOARDS; column += LOOKED_AT_BOARD_STEP) {
    const cell = start + column
    const kink = microns[cell - FILM_BOARDS]! - 2 * microns[cell]! + microns[cell + FILM_BOARDS]!
    if (kink > ROUGH_MICRONS || kink < -ROUGH_MICRONS) return true
  }
  return false
}
