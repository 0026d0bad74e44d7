import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../../sim/world/lane/film.js'
import { type Canvas, ground, put } from '../draw/canvas.js'
import type { LaneScale } from '../draw/lane-scale.js'
import { OIL_LEVELS, type Theme } from '../draw/theme.js'

/** Film at which the ramp is full. */
const FULL_RAMP_MICRONS = 4

/** The film as the lane's ground, dry boards too, or by density where the ground cannot be coloured. */
export function putOil(canvas: Canvas, scale: LaneScale, film: OilFilm, theme: Theme): void {
  for (let column = 0; column < scale.columns; column++) {
    for (let row = 0; row < scale.rows; row++) {
      const level = oilLevel(meanFilm(film, column, row, scale))
      if (theme.colouredGround) ground(canvas, scale.left + column, 1 + row, level)
      else if (level > 0) put(canvas, scale.left + column, 1 + row, theme.glyphs.oil[level]!, 'older')
    }
  }
}

/** Mean film under one character of the picture, which shows the lane from above: board 39 of a right-hander is up. */
function meanFilm(film: OilFilm, column: number, row: number, scale: LaneScale): number {
  const lengthwise = FILM_ROWS / scale.columns
  const crosswise = FILM_BOARDS / scale.rows
  const fromTop = scale.rows - 1 - row
  return meanOver(
    film,
    [column * lengthwise, (column + 1) * lengthwise],
    [fromTop * crosswise, (fromTop + 1) * crosswise],
  )
}

/** Mean over a rectangle given in film rows and boards from the right edge; cells at its rim count by their part inside. */
function meanOver(film: OilFilm, rows: readonly [number, number], boards: readonly [number, number]): number {
  let sum = 0
  for (let row = Math.floor(rows[0]); row < Math.min(FILM_ROWS, rows[1]); row++) {
    const rowPart = Math.min(row + 1, rows[1]) - Math.max(row, rows[0])
    for (let board = Math.floor(boards[0]); board < Math.min(FILM_BOARDS, boards[1]); board++) {
      const boardPart = Math.min(board + 1, boards[1]) - Math.max(board, boards[0])
      sum += rowPart * boardPart * film.microns[row * FILM_BOARDS + board]!
    }
  }
  return sum / ((rows[1] - rows[0]) * (boards[1] - boards[0]))
}

/** Level of the ramp for a film: 0 below what a finger would feel, then by the square root, which spreads the thin end. */
export function oilLevel(microns: number): number {
  if (microns < 0.02) return 0
  return Math.min(OIL_LEVELS, 1 + Math.floor((OIL_LEVELS - 1) * Math.sqrt(microns / FULL_RAMP_MICRONS)))
}
