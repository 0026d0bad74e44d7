import { FILM_ROWS } from '../lane/film.js'

/**
 * Fills in the film rows that a step has passed, by the cubic that fits place and slope at both ends.
 * @param path gets y in metres at the middle of each row
 * @param place where the step began, and `length` how far it went, in rows
 */
export function writeRowsPassed(
  path: Float64Array,
  place: number,
  length: number,
  from: number,
  slopeFrom: number,
  to: number,
  slopeTo: number,
): void {
  for (let row = Math.max(0, Math.floor(place) + 1); row <= place + length && row < FILM_ROWS; row++) {
    const share = (row - place) / length
    const left = 1 - share
    path[row] =
      from * left * left * (1 + 2 * share) +
      to * share * share * (1 + 2 * left) +
      length * share * left * (slopeFrom * left - slopeTo * share)
  }
}
