import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../../sim/world/lane/film.js'

/** From dry to the heaviest oil of the picture. */
const RAMP = ' .:-=+*#%@'
const HALF_FEET_PER_COLUMN = 2
const BOARDS_PER_ROW = 3

/**
 * The oil as text: the lane on its side, foul line left and pins right, board 1 at the bottom, one column a foot and
 * one row three boards, darker where there is more. `thickest` (micrometres) fixes the scale, so that two pictures can be compared.
 */
export function oilPicture(film: OilFilm, thickest = thickestMicrons(film)): string[] {
  const rows: string[] = []
  for (let top = FILM_BOARDS; top >= 1; top -= BOARDS_PER_ROW) {
    const low = top - BOARDS_PER_ROW + 1
    let cells = ''
    for (let row = 0; row < FILM_ROWS; row += HALF_FEET_PER_COLUMN) {
      cells += shade(meanOf(film, low, top, row), thickest)
    }
    rows.push(`${`${low}-${top}`.padStart(7)} |${cells}|`)
  }
  rows.push(`${' '.repeat(9)}${feetScale()}`)
  const step = (thickest / (RAMP.length - 1)).toFixed(2)
  rows.push(`boards from the right; blank is dry, each of "${RAMP.slice(1)}" is ${step} µm more`)
  return rows
}

export function thickestMicrons(film: OilFilm): number {
  return film.microns.reduce((most, micron) => Math.max(most, micron), 0)
}

function meanOf(film: OilFilm, low: number, high: number, row: number): number {
  let sum = 0
  for (let half = row; half < row + HALF_FEET_PER_COLUMN; half++) {
    for (let board = low; board <= high; board++) sum += film.microns[half * FILM_BOARDS + board - 1]
  }
  return sum / (HALF_FEET_PER_COLUMN * (high - low + 1))
}

/** Blank only where there is next to nothing: a thin film still matters to a ball. */
function shade(microns: number, thickest: number): string {
  if (microns < 0.005 || thickest === 0) return RAMP[0]
  const level = Math.ceil((microns / thickest) * (RAMP.length - 1))
  return RAMP[Math.min(RAMP.length - 1, Math.max(1, level))]
}

function feetScale(): string {
  let scale = ''
  for (let feet = 0; feet <= 60; feet += 10) scale = scale.padEnd(feet) + feet
  return `${scale} ft`
}
