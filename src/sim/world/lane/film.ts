import { BOARD_COUNT, BOARD_WIDTH_METRES } from '../../units.js'

export const FILM_BOARDS = BOARD_COUNT
/** Half a foot: 120 rows cover the 60 ft from the foul line to the headpin. */
export const FILM_ROW_METRES = 0.1524
export const FILM_ROWS = 120
export const FILM_CELLS = FILM_ROWS * FILM_BOARDS

/** 1 µm over 1 m² is 1 mL, hence the 1000 for microlitres. */
export const MICROLITRES_PER_MICRON_CELL = FILM_ROW_METRES * BOARD_WIDTH_METRES * 1000

/**
 * Oil thickness in micrometres, one value a cell of one board by half a foot.
 * Cell (row, board) sits at index row * 39 + (board - 1); row r covers r to r + 1 half feet from the foul line.
 */
export interface OilFilm {
  readonly microns: Float64Array
}

/** A lane stripped dry. */
export function emptyFilm(): OilFilm {
  return { microns: new Float64Array(FILM_CELLS) }
}

export function copyFilm(film: OilFilm): OilFilm {
  return { microns: film.microns.slice() }
}

/** The film seen in a mirror: board b becomes board 40 - b, every other place stays. */
export function mirrorFilm(film: OilFilm): OilFilm {
  const microns = new Float64Array(FILM_CELLS)
  for (let row = 0; row < FILM_ROWS; row++) {
    const start = row * FILM_BOARDS
    for (let column = 0; column < FILM_BOARDS; column++) {
      microns[start + column] = film.microns[start + FILM_BOARDS - 1 - column]!
    }
  }
  return { microns }
}

/** Oil on the lane in microlitres: thickness times area, summed over the cells. */
export function filmVolumeMicrolitres(film: OilFilm): number {
  let microns = 0
  for (let cell = 0; cell < FILM_CELLS; cell++) microns += film.microns[cell]!
  return microns * MICROLITRES_PER_MICRON_CELL
}

/** The row whose middle lies before a distance, and the share of the next one there. */
export function betweenRows(metres: number): { row: number; share: number } {
  const place = Math.min(Math.max(metres / FILM_ROW_METRES - 0.5, 0), FILM_ROWS - 1)
  const row = Math.min(Math.floor(place), FILM_ROWS - 2)
  return { row, share: place - row }
}

/** Mean thickness of boards `fromBoard` to `toBoard` (inclusive) at a distance, linear between the rows' middles, in micrometres. */
export function meanFilmMicrons(film: OilFilm, fromBoard: number, toBoard: number, metres: number): number {
  const { row, share } = betweenRows(metres)
  let sum = 0
  for (let board = fromBoard; board <= toBoard; board++) {
    const cell = row * FILM_BOARDS + board - 1
    sum += film.microns[cell]! * (1 - share) + film.microns[cell + FILM_BOARDS]! * share
  }
  return sum / (toBoard - fromBoard + 1)
}
