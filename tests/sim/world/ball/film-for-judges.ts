import { BOARD_WIDTH_METRES } from '../../../../src/sim/units.js'
import type { OilFilm } from '../../../../src/sim/world/lane/film.js'

const clamp = (value: number, most: number): number => Math.min(Math.max(value, 0), most)

/** Film at a place, bilinear between the middles of the cells: written anew, plainly, so that it can judge the fast one. */
export function filmAt({ microns }: OilFilm, x: number, y: number): number {
  const along = clamp(x / 0.1524 - 0.5, 119)
  const across = clamp(y / BOARD_WIDTH_METRES - 0.5, 38)
  const row = Math.min(Math.floor(along), 118)
  const board = Math.min(Math.floor(across), 37)
  const u = along - row
  const v = across - board
  const cell = row * 39 + board
  return (
    (1 - u) * (1 - v) * microns[cell]! +
    (1 - u) * v * microns[cell + 1]! +
    u * (1 - v) * microns[cell + 39]! +
    u * v * microns[cell + 40]!
  )
}
