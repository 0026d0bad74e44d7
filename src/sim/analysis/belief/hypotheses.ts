import { exponential, naturalLogarithm, normalDistribution, normalQuantile } from '../../exact-math.js'
import type { RandomSource } from '../../random.js'
import { metresToFeet } from '../../units.js'
import { FILM_BOARDS, FILM_CELLS, FILM_ROWS, type OilFilm } from '../../world/lane/film.js'
import { measurePattern } from '../../world/lane/pattern.js'
import { layFamilyMember, PATTERN_COORDINATES } from './pattern-family.js'
import type { PatternRanges } from './pattern-ranges.js'

/** One coordinate more than the pattern has: how fast balls wear the oil. */
export const COORDINATES = PATTERN_COORDINATES + 1
const WEAR_COORDINATE = PATTERN_COORDINATES
/** The share of oil a cover lifts is known only to within these factors. */
const WEAR_FACTORS: readonly [number, number] = [0.6, 1.6]
const LOG_WEAR = WEAR_FACTORS.map(naturalLogarithm)

/**
 * A weighted set of ideas about the oil. Arrays run over hypotheses; films lie lane by lane in one block of memory.
 * Coordinates are standard normal numbers in the prior.
 */
export interface HypothesisSet {
  readonly size: number
  /** How many lanes carry the pattern: two when both are posted alike. */
  readonly laneCount: number
  readonly coordinates: Float64Array
  /** Sum to 1. */
  readonly weights: Float64Array
  readonly wearFactors: Float64Array
  /** Measured on the fresh pattern. */
  readonly lengthFeet: Float64Array
  readonly volumeMillilitres: Float64Array
  readonly ratio: Float64Array
  readonly films: Float64Array
  /** What all throws so far speak for each: a logarithm of likelihood, tempered. */
  readonly credits: Float64Array
}

/** An equally weighted set of `size` hypotheses without coordinates or oil. */
export function blankHypotheses(size: number, laneCount: number): HypothesisSet {
  return {
    size,
    laneCount,
    coordinates: new Float64Array(size * COORDINATES),
    weights: new Float64Array(size).fill(1 / size),
    wearFactors: new Float64Array(size),
    lengthFeet: new Float64Array(size),
    volumeMillilitres: new Float64Array(size),
    ratio: new Float64Array(size),
    films: new Float64Array(laneCount * size * FILM_CELLS),
    credits: new Float64Array(size),
  }
}

/** A copy that shares no memory. */
export function copyHypotheses(set: HypothesisSet): HypothesisSet {
  return {
    ...set,
    coordinates: set.coordinates.slice(),
    weights: set.weights.slice(),
    wearFactors: set.wearFactors.slice(),
    lengthFeet: set.lengthFeet.slice(),
    volumeMillilitres: set.volumeMillilitres.slice(),
    ratio: set.ratio.slice(),
    films: set.films.slice(),
    credits: set.credits.slice(),
  }
}

/**
 * Draws coordinates from the prior, each spread evenly over its distribution (a Latin hypercube), so that even a small
 * set holds long and short, flat and steep in their true shares.
 */
export function drawCoordinates(set: HypothesisSet, random: RandomSource): void {
  const { size, coordinates } = set
  const order = Uint32Array.from({ length: size }, (_, i) => i)
  for (let c = 0; c < COORDINATES; c++) {
    for (let i = size - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1))
      const kept = order[i]
      order[i] = order[j]
      order[j] = kept
    }
    for (let i = 0; i < size; i++) coordinates[i * COORDINATES + c] = normalQuantile((order[i] + random()) / size)
  }
}

/** Lays and measures every hypothesis' fresh oil from its coordinates; from the left edge where `mirrored`. */
export function layHypotheses(set: HypothesisSet, ranges: PatternRanges, mirrored: boolean): void {
  for (let i = 0; i < set.size; i++) layHypothesis(set, i, ranges, mirrored)
}

/** The same for one of them. */
export function layHypothesis(set: HypothesisSet, i: number, ranges: PatternRanges, mirrored: boolean): void {
  const z = set.coordinates.subarray(i * COORDINATES, (i + 1) * COORDINATES)
  const film = filmAt(set, 0, i)
  layFamilyMember(z, ranges, film.microns)
  const measured = measurePattern(film)
  set.lengthFeet[i] = metresToFeet(measured.lengthMetres)
  set.volumeMillilitres[i] = measured.volumeMicrolitres / 1000
  set.ratio[i] = measured.ratio
  set.wearFactors[i] = exponential(LOG_WEAR[0] + (LOG_WEAR[1] - LOG_WEAR[0]) * normalDistribution(z[WEAR_COORDINATE]))
  if (mirrored) mirrorInPlace(film.microns)
  for (let lane = 1; lane < set.laneCount; lane++) filmAt(set, lane, i).microns.set(film.microns)
}

/** Copies a hypothesis with its oil over another one, in the same set or another; weights stay. */
export function copyHypothesis(from: HypothesisSet, index: number, to: HypothesisSet, place: number): void {
  to.coordinates.set(from.coordinates.subarray(index * COORDINATES, (index + 1) * COORDINATES), place * COORDINATES)
  to.wearFactors[place] = from.wearFactors[index]
  to.lengthFeet[place] = from.lengthFeet[index]
  to.volumeMillilitres[place] = from.volumeMillilitres[index]
  to.ratio[place] = from.ratio[index]
  to.credits[place] = from.credits[index]
  for (let lane = 0; lane < from.laneCount; lane++)
    filmAt(to, lane, place).microns.set(filmAt(from, lane, index).microns)
}

/** The film of hypothesis `index` on the `lane`-th lane of the set, as a view into it. */
export function filmAt(set: HypothesisSet, lane: number, index: number): OilFilm {
  const start = (lane * set.size + index) * FILM_CELLS
  return { microns: set.films.subarray(start, start + FILM_CELLS) }
}

/** Turns a film into its mirror image. */
export function mirrorInPlace(microns: Float64Array): void {
  for (let row = 0; row < FILM_ROWS; row++) {
    let right = row * FILM_BOARDS
    let left = right + FILM_BOARDS - 1
    for (; right < left; right++, left--) {
      const kept = microns[right]
      microns[right] = microns[left]
      microns[left] = kept
    }
  }
}

/** How many equally weighted hypotheses the set is worth: 1 / Σ w². */
export function effectiveSize(weights: Float64Array): number {
  let sum = 0
  for (let i = 0; i < weights.length; i++) sum += weights[i] * weights[i]
  return 1 / sum
}

/** `count` indices in proportion to the weights, by one uniform number (systematic resampling). */
export function pickSystematically(weights: Float64Array, count: number, uniform: number): Uint32Array {
  const picked = new Uint32Array(count)
  let index = 0
  let reached = weights[0]
  for (let k = 0; k < count; k++) {
    const mark = (k + uniform) / count
    while (mark > reached && index < weights.length - 1) reached += weights[++index]
    picked[k] = index
  }
  return picked
}
