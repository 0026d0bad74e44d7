import type { RandomSource } from '../../random.js'
import { feetToMetres } from '../../units.js'
import { FILM_BOARDS, FILM_ROWS, filmVolumeMicrolitres, type OilFilm } from './film.js'
import { layPattern, measurePattern, type OilPattern } from './pattern.js'

/** How far a machine may be off what its sheet says: ±1 ft, ±10 % of volume and ratio (common practice, no source). */
export const LENGTH_OFF_FEET = 1
export const VOLUME_OFF_SHARE = 0.1
export const RATIO_OFF_SHARE = 0.1

const HALF_FOOT_METRES = feetToMetres(0.5)
/** Whole half feet either way. */
const LENGTH_OFF_STEPS = 2 * LENGTH_OFF_FEET
/** Oil outside of the first of these boards, counted from the nearer edge, stays as it is; from the second on it is the crown. */
const OUTSIDE_BOARD = 7
const INSIDE_BOARD = 18

/** What a machine did otherwise than its sheet says. */
export interface LaidOff {
  readonly lengthMetres: number
  /** Factors on volume and ratio. */
  readonly volume: number
  readonly ratio: number
}

/** Draws how far the machine was off, evenly within what it may be. */
export function drawLaidOff(random: RandomSource): LaidOff {
  const steps = Math.floor(random() * (2 * LENGTH_OFF_STEPS + 1)) - LENGTH_OFF_STEPS
  const within = (share: number): number => 1 + share * (2 * random() - 1)
  return { lengthMetres: steps * HALF_FOOT_METRES, volume: within(VOLUME_OFF_SHARE), ratio: within(RATIO_OFF_SHARE) }
}

/**
 * The film a pattern leaves when the machine is off by so much: every stroke longer or shorter in proportion, the boards
 * between 7 and 18 from either edge bending towards the other ratio, and all of it more or less. Length, volume and ratio as
 * measured are off by just that.
 * @throws RangeError when a pass cannot be laid
 */
export function layAsOff(pattern: OilPattern, { lengthMetres, volume, ratio }: LaidOff): OilFilm {
  const sheet = layPattern(pattern)
  const length = measurePattern(sheet).lengthMetres
  const longer = length > 0 ? (length + lengthMetres) / length : 1
  const film = layPattern({ ...pattern, passes: pattern.passes.map((pass) => stretched(pass, longer)) })
  for (let row = 0; row < FILM_ROWS; row++)
    for (let board = 1; board <= FILM_BOARDS; board++)
      film.microns[row * FILM_BOARDS + board - 1] *= crowned(board, ratio)
  const laid = filmVolumeMicrolitres(film)
  const share = laid > 0 ? (volume * filmVolumeMicrolitres(sheet)) / laid : 1
  for (let cell = 0; cell < film.microns.length; cell++) film.microns[cell] *= share
  return film
}

function stretched(pass: OilPattern['passes'][number], longer: number): OilPattern['passes'][number] {
  const toHalfFoot = (metres: number): number => Math.round((metres * longer) / HALF_FOOT_METRES) * HALF_FOOT_METRES
  const fromMetres = toHalfFoot(pass.fromMetres)
  const toMetres = toHalfFoot(pass.toMetres)
  const reach = Math.abs(toMetres - fromMetres)
  if (reach === 0) return pass
  return { ...pass, fromMetres, toMetres, taperMetres: Math.min(pass.taperMetres, reach) }
}

function crowned(board: number, ratio: number): number {
  const fromEdge = Math.min(board, FILM_BOARDS + 1 - board)
  const share = Math.min(1, Math.max(0, (fromEdge - OUTSIDE_BOARD) / (INSIDE_BOARD - OUTSIDE_BOARD)))
  return 1 + (ratio - 1) * share
}
