import { feetToMetres, metresToFeet } from '../../units.js'
import { WIDEST_LIMITS } from '../../world/lane/generator.js'
import type { PostedSheet } from '../view/player-view.js'

/** Ranges within which the three measured figures of an imagined pattern lie, each [least, most]. */
export interface PatternRanges {
  readonly lengthHalfFeet: readonly [number, number]
  readonly volumeMicrolitres: readonly [number, number]
  readonly ratio: readonly [number, number]
}

/** A bare length is taken as good to this much. */
const LENGTH_ALONE_FEET = 1
/** A sheet prints whole feet, tenths of a millilitre and tenths of the ratio. */
const SHEET_FEET = 0.5
const SHEET_MICROLITRES = 50
const SHEET_RATIO = 0.05

/** What the posted figures leave open; everything between the widest limits where nothing is posted. */
export function rangesOf(posted: PostedSheet | null): PatternRanges {
  const { volumeMicrolitres, ratio, lengthMetres } = WIDEST_LIMITS
  if (posted === null) {
    const lengthHalfFeet = [halfFeet(lengthMetres[0]), halfFeet(lengthMetres[1])] as const
    return { lengthHalfFeet, volumeMicrolitres, ratio }
  }
  const volume = posted.volumeMillilitres
  const isSheet = volume !== undefined && posted.ratio !== undefined
  return {
    lengthHalfFeet: around(2 * posted.lengthFeet, 2 * (isSheet ? SHEET_FEET : LENGTH_ALONE_FEET)),
    volumeMicrolitres: volume === undefined ? volumeMicrolitres : around(volume * 1000, SHEET_MICROLITRES),
    ratio: posted.ratio === undefined ? ratio : around(posted.ratio, SHEET_RATIO),
  }
}

/** Two lanes posted with the same full sheet carry the same pattern. */
export function isSameSheet(first: PostedSheet | null, second: PostedSheet | null): boolean {
  if (first?.ratio === undefined || second?.ratio === undefined) return false
  return (
    first.lengthFeet === second.lengthFeet &&
    first.volumeMillilitres === second.volumeMillilitres &&
    first.ratio === second.ratio
  )
}

const halfFeet = (metres: number): number => Math.round(2 * metresToFeet(metres))

const around = (middle: number, reach: number): readonly [number, number] => [middle - reach, middle + reach]

export const halfFeetToMetres = (count: number): number => feetToMetres(count / 2)
