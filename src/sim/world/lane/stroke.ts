import { FILM_ROW_METRES, FILM_ROWS } from './film.js'

/**
 * The share of one machine stroke's oil that falls in each row of the film; the shares sum to 1.
 * The film is even along the travel and falls off linearly to nothing over its last `taperMetres`: at the far end of a
 * forward stroke, at the near end of a reverse one. The two ends may be given in either order.
 */
export function strokeShares(
  direction: 'forward' | 'reverse',
  oneEndMetres: number,
  otherEndMetres: number,
  taperMetres: number,
): Float64Array {
  const near = Math.min(oneEndMetres, otherEndMetres)
  const far = Math.max(oneEndMetres, otherEndMetres)
  const length = far - near
  const shares = new Float64Array(FILM_ROWS)
  let sum = 0
  for (let row = 0; row < FILM_ROWS; row++) {
    const rowNear = Math.min(Math.max(row * FILM_ROW_METRES, near), far)
    const rowFar = Math.min(Math.max((row + 1) * FILM_ROW_METRES, near), far)
    const oil =
      direction === 'forward'
        ? laidAfter(rowFar - near, length, taperMetres) - laidAfter(rowNear - near, length, taperMetres)
        : laidAfter(far - rowNear, length, taperMetres) - laidAfter(far - rowFar, length, taperMetres)
    shares[row] = oil
    sum += oil
  }
  for (let row = 0; row < FILM_ROWS; row++) shares[row]! /= sum
  return shares
}

/** Oil laid after `travel` metres of a stroke, counted in metres of undiminished film. */
function laidAfter(travel: number, length: number, taper: number): number {
  const intoTaper = travel - (length - taper)
  return intoTaper <= 0 || taper === 0 ? travel : travel - (intoTaper * intoTaper) / (2 * taper)
}
