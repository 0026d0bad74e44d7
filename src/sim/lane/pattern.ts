import { feetToMetres } from '../units.js'
import {
  emptyFilm,
  FILM_BOARDS,
  FILM_ROW_METRES,
  FILM_ROWS,
  filmVolumeMicrolitres,
  MICROLITRES_PER_MICRON_CELL,
  meanFilmMicrons,
  type OilFilm,
} from './film.js'
import { strokeShares } from './stroke.js'

/**
 * One pass of the lane machine: every board from `fromBoard` to `toBoard` (inclusive, counted from the right edge) gets
 * `microlitresPerBoard` a stroke, spread between `fromMetres` and `toMetres`. The machine travels away from the foul line
 * on a forward pass and back to it on a reverse pass; the film is even along the stroke and falls off linearly to nothing
 * over the last `taperMetres` of travel, where the brush runs dry. Which of the two ends is written first does not matter.
 */
export interface OilPass {
  readonly direction: 'forward' | 'reverse'
  readonly fromBoard: number
  readonly toBoard: number
  readonly microlitresPerBoard: number
  readonly fromMetres: number
  readonly toMetres: number
  readonly taperMetres: number
  /** How many times the pass is made; 1 when left out. */
  readonly strokes?: number
}

export interface OilPattern {
  readonly name: string
  readonly passes: readonly OilPass[]
}

export type LaneClass = 'sport' | 'challenge' | 'standard'

/** Middle over outside film at one distance, each side by itself. */
export interface RatioReading {
  readonly atMetres: number
  readonly insideMicrons: number
  readonly leftMicrons: number
  readonly rightMicrons: number
  /** Worse of the two sides; Infinity where the outside is dry. */
  readonly ratio: number
}

export interface PatternMeasurement {
  readonly volumeMicrolitres: number
  readonly lengthMetres: number
  /** Worst of all readings. */
  readonly ratio: number
  readonly laneClass: LaneClass
  readonly readings: readonly RatioReading[]
}

const OILABLE_METRES = FILM_ROWS * FILM_ROW_METRES

/** What is wrong with a pass, in one sentence; null when it can be laid. */
export function checkPass(pass: OilPass): string | null {
  const { fromBoard, toBoard, microlitresPerBoard, fromMetres, toMetres, taperMetres, strokes = 1 } = pass
  if (!Number.isInteger(fromBoard) || !Number.isInteger(toBoard) || fromBoard < 1 || toBoard > FILM_BOARDS)
    return `Boards ${fromBoard} to ${toBoard} are not whole boards from 1 to ${FILM_BOARDS}.`
  if (fromBoard > toBoard) return `The first board, ${fromBoard}, lies left of the last one, ${toBoard}.`
  if (!(microlitresPerBoard > 0 && Number.isFinite(microlitresPerBoard)))
    return `The oil on a board is ${microlitresPerBoard} µL; it must be more than 0.`
  if (!Number.isInteger(strokes) || strokes < 1)
    return `The pass has ${strokes} strokes; it needs a whole number from 1.`
  const near = Math.min(fromMetres, toMetres)
  const far = Math.max(fromMetres, toMetres)
  if (!(near >= 0 && far <= OILABLE_METRES + 1e-9 && far > near))
    return `The stroke runs from ${near} m to ${far} m; it must have a length and lie between 0 and ${OILABLE_METRES} m.`
  if (!(taperMetres >= 0 && taperMetres <= far - near))
    return `The brush runs dry over ${taperMetres} m; it must be from 0 to the stroke's length, ${far - near} m.`
  return null
}

/** Oil of one pass in microlitres: boards covered times microlitres a board times strokes, as on a lane machine's sheet. */
export function passVolumeMicrolitres(pass: OilPass): number {
  return (pass.toBoard - pass.fromBoard + 1) * pass.microlitresPerBoard * (pass.strokes ?? 1)
}

/** Oil of a whole pattern in microlitres, from its passes alone. */
export function patternVolumeMicrolitres(pattern: OilPattern): number {
  return pattern.passes.reduce((sum, pass) => sum + passVolumeMicrolitres(pass), 0)
}

/**
 * The film a pattern leaves on a stripped lane.
 * @throws RangeError when a pass cannot be laid, with the sentence of `checkPass`.
 */
export function layPattern(pattern: OilPattern): OilFilm {
  const film = emptyFilm()
  for (const pass of pattern.passes) layPass(film, pass)
  return film
}

function layPass(film: OilFilm, pass: OilPass): void {
  const problem = checkPass(pass)
  if (problem !== null) throw new RangeError(problem)
  const share = strokeShares(pass.direction, pass.fromMetres, pass.toMetres, pass.taperMetres)
  const microlitresOnBoard = pass.microlitresPerBoard * (pass.strokes ?? 1)
  for (let row = 0; row < FILM_ROWS; row++) {
    if (share[row] === 0) continue
    const microns = (microlitresOnBoard * share[row]!) / MICROLITRES_PER_MICRON_CELL
    for (let board = pass.fromBoard; board <= pass.toBoard; board++) {
      film.microns[row * FILM_BOARDS + board - 1]! += microns
    }
  }
}

/** A film thinner than this is a wiped lane to any gauge: it does not count towards the length. */
const TRACE_MICRONS = 0.01

/**
 * Volume, length, ratio and class of freshly laid oil.
 *
 * Ratio: mean film of boards 18-22 over mean film of boards 3-7 of each side, worse side, read at 22 ft and at 2 ft before
 * the oil ends, the worse reading counting (the governing body's sport-condition rule; "middle five" after a 2005 tournament sheet).
 * Class: up to 4:1 sport, up to 7:1 challenge, above that standard (the governing body's league page).
 */
export function measurePattern(film: OilFilm): PatternMeasurement {
  const lengthMetres = oilLengthMetres(film)
  const readings = [feetToMetres(22), lengthMetres - feetToMetres(2)]
    .filter((metres) => metres > 0 && metres < lengthMetres)
    .map((metres) => readRatio(film, metres))
  const ratio = readings.length === 0 ? 1 : Math.max(...readings.map((reading) => reading.ratio))
  return {
    volumeMicrolitres: filmVolumeMicrolitres(film),
    lengthMetres,
    ratio,
    laneClass: laneClassOf(ratio),
    readings,
  }
}

/** Class of a ratio: at most 4 sport, at most 7 challenge, above standard. */
export function laneClassOf(ratio: number): LaneClass {
  if (ratio <= 4) return 'sport'
  return ratio <= 7 ? 'challenge' : 'standard'
}

/** Far end of the last half foot in which any board carries oil; 0 on a dry lane. */
function oilLengthMetres(film: OilFilm): number {
  for (let row = FILM_ROWS - 1; row >= 0; row--) {
    for (let cell = row * FILM_BOARDS; cell < (row + 1) * FILM_BOARDS; cell++) {
      if (film.microns[cell]! >= TRACE_MICRONS) return (row + 1) * FILM_ROW_METRES
    }
  }
  return 0
}

function readRatio(film: OilFilm, atMetres: number): RatioReading {
  const insideMicrons = meanFilmMicrons(film, 18, 22, atMetres)
  const leftMicrons = meanFilmMicrons(film, 33, 37, atMetres)
  const rightMicrons = meanFilmMicrons(film, 3, 7, atMetres)
  const outside = Math.min(leftMicrons, rightMicrons)
  const ratio = outside > 0 ? insideMicrons / outside : insideMicrons > 0 ? Number.POSITIVE_INFINITY : 1
  return { atMetres, insideMicrons, leftMicrons, rightMicrons, ratio }
}
