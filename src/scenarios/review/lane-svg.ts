import type { ThrowRecord } from '../../sim/block/types.js'
import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../../sim/lane/film.js'
import { metresToBoard } from '../../sim/units.js'

const HALF_FEET_A_CELL = 4
const CELL_WIDTH = 14
const BOARD_HEIGHT = 4
const WIDTH = (FILM_ROWS / HALF_FEET_A_CELL) * CELL_WIDTH
const HEIGHT = FILM_BOARDS * BOARD_HEIGHT

/** A lane on its side, foul line left, board 1 of the lane at the bottom: oil as shades of one colour, throws as lines over it. */
export function laneSvg(film: OilFilm, throws: readonly ThrowRecord[], leftHanded: boolean, title: string): string {
  const thickest = film.microns.reduce((most, micron) => Math.max(most, micron), 1e-9)
  return [
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${title}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" class="wood"/>`,
    ...oilCells(film, thickest),
    ...throws.map((thrown) => pathLine(thrown, leftHanded)),
    '</svg>',
  ].join('')
}

function oilCells(film: OilFilm, thickest: number): string[] {
  const cells: string[] = []
  for (let row = 0; row < FILM_ROWS; row += HALF_FEET_A_CELL) {
    for (let board = 1; board <= FILM_BOARDS; board++) {
      let sum = 0
      for (let half = row; half < row + HALF_FEET_A_CELL; half++) sum += film.microns[half * FILM_BOARDS + board - 1]
      const share = sum / HALF_FEET_A_CELL / thickest
      if (share < 0.005) continue
      const x = (row / HALF_FEET_A_CELL) * CELL_WIDTH
      const y = HEIGHT - board * BOARD_HEIGHT
      cells.push(
        `<rect x="${x}" y="${y}" width="${CELL_WIDTH}" height="${BOARD_HEIGHT}" class="oil" opacity="${share.toFixed(2)}"/>`,
      )
    }
  }
  return cells
}

function pathLine({ truth }: ThrowRecord, leftHanded: boolean): string {
  const points: string[] = []
  for (let row = 0; row < FILM_ROWS; row += 2) {
    if (Number.isNaN(truth.path[row])) continue
    const own = metresToBoard(truth.path[row])
    const board = leftHanded ? 40 - own : own
    points.push(
      `${(((row + 0.5) / HALF_FEET_A_CELL) * CELL_WIDTH).toFixed(1)},${(HEIGHT - (board - 0.5) * BOARD_HEIGHT).toFixed(1)}`,
    )
  }
  return `<polyline points="${points.join(' ')}" class="throw"/>`
}
