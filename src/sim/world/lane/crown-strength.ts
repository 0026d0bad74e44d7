import { feetToMetres } from '../../units.js'
import { meanStrokeMicrons, type OilStroke } from './oil-pass.js'

/**
 * How much crown on the base makes the worst reading of a pattern's ratio exactly `ratio`; null when no amount does.
 * At each reading and side (base inside + s·crown inside) / (base outside + s·crown outside) = ratio is linear in s; the
 * least s is where the first reading gets there. Boards and distances of the readings as in `measurePattern`.
 */
export function crownStrength(
  base: readonly OilStroke[],
  crown: readonly OilStroke[],
  lengthMetres: number,
  ratio: number,
): number | null {
  let least = Number.POSITIVE_INFINITY
  for (const metres of [feetToMetres(22), lengthMetres - feetToMetres(2)])
    for (const firstBoard of [3, 33]) {
      const outside = (strokes: readonly OilStroke[]): number =>
        meanStrokeMicrons(strokes, firstBoard, firstBoard + 4, metres)
      const inside = (strokes: readonly OilStroke[]): number => meanStrokeMicrons(strokes, 18, 22, metres)
      const gain = inside(crown) - ratio * outside(crown)
      if (gain > 0) least = Math.min(least, (ratio * outside(base) - inside(base)) / gain)
    }
  return Number.isFinite(least) ? least : null
}
