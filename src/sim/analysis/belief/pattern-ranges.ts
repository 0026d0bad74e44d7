import { feetToMetres, metresToFeet } from '../../units.js'
import type { PostedSheet } from '../../world/block/types.js'
import { LENGTH_OFF_FEET, RATIO_OFF_SHARE, VOLUME_OFF_SHARE } from '../../world/lane/as-laid.js'
import { WIDEST_LIMITS } from '../../world/lane/generator.js'

/** Ranges within which the three measured figures of an imagined pattern lie, each [least, most]. */
export interface PatternRanges {
  readonly lengthHalfFeet: readonly [number, number]
  readonly volumeMicrolitres: readonly [number, number]
  readonly ratio: readonly [number, number]
}

/** A sheet prints half feet, tenths of a millilitre and tenths of the ratio. */
const SHEET_MICROLITRES = 50
const SHEET_RATIO = 0.05
/** No oil is flatter than this. */
const LEAST_RATIO = 1.02

/** What the posted figures leave open, since a machine is off a little; everything between the widest limits where nothing is posted. */
export function rangesOf(posted: PostedSheet | null): PatternRanges {
  const { volumeMicrolitres, ratio, lengthMetres } = WIDEST_LIMITS
  if (posted === null) {
    const lengthHalfFeet = [halfFeet(lengthMetres[0]), halfFeet(lengthMetres[1])] as const
    return { lengthHalfFeet, volumeMicrolitres, ratio }
  }
  const volume = posted.volumeMillilitres
  return {
    lengthHalfFeet: around(2 * posted.lengthFeet, 2 * LENGTH_OFF_FEET),
    volumeMicrolitres:
      volume === undefined
        ? volumeMicrolitres
        : around(volume * 1000, VOLUME_OFF_SHARE * volume * 1000 + SHEET_MICROLITRES),
    ratio:
      posted.ratio === undefined
        ? ratio
        : atLeast(LEAST_RATIO, around(posted.ratio, RATIO_OFF_SHARE * posted.ratio + SHEET_RATIO)),
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

const atLeast = (least: number, [low, high]: readonly [number, number]): readonly [number, number] => [
  Math.max(least, low),
  Math.max(least, high),
]

const around = (middle: number, reach: number): readonly [number, number] => [middle - reach, middle + reach]

export const halfFeetToMetres = (count: number): number => feetToMetres(count / 2)
