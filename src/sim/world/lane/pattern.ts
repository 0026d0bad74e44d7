import { feetToMetres } from '../../units.js'
import {
  emptyFilm,
  FILM_BOARDS,
  FILM_ROW_METRES,
  FILM_ROWS,
  filmVolumeMicrolitres,
  meanFilmMicrons,
  type OilFilm,
} from './film.js'
import { layStroke, type OilPass, passVolumeMicrolitres, strokeOf } from './oil-pass.js'

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

/** Oil of a whole pattern in microlitres, from its passes alone. */
export function patternVolumeMicrolitres({ passes }: Pick<OilPattern, 'passes'>): number {
  return passes.reduce((sum, pass) => sum + passVolumeMicrolitres(pass), 0)
}

/**
 * The film a pattern leaves on a stripped lane.
 * @throws RangeError when a pass cannot be laid, with the sentence of `checkPass`.
 */
export function layPattern(pattern: OilPattern): OilFilm {
  const film = emptyFilm()
  for (const pass of pattern.passes) layStroke(film.microns, strokeOf(pass))
  return film
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
