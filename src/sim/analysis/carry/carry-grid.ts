import { degreesToRadians, inchesToMetres, mphToMetresPerSecond, poundsToKilograms } from '../../units.js'
import { FULL_RACK, mirrorMask } from '../../world/pins/leaves.js'
import { USUAL_MATERIALS, USUAL_SPREAD } from '../../world/pins/materials.js'
import { RACK_VERSION } from '../../world/pins/rack.js'

const evenly = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step)

const FINE_OFFSETS_INCHES = evenly(-8, 8, 0.25)
const COARSE_OFFSETS_INCHES = evenly(8.75, 20.75, 0.75)

/** Offsets of the table, inches right of the head pin: close together where a full rack's leaves change fast. */
export const CARRY_OFFSETS_INCHES: readonly number[] = [
  ...COARSE_OFFSETS_INCHES.map((offset) => -offset).reverse(),
  ...FINE_OFFSETS_INCHES,
  ...COARSE_OFFSETS_INCHES,
]
export const CARRY_ANGLES_DEGREES: readonly number[] = evenly(0, 8, 1)
export const CARRY_SPEEDS_MPH: readonly number[] = [13.5, 17.5]
export const CARRY_THROWS = 256
/** All throws of the table are with a 15 lb ball. */
export const CARRY_BALL_KILOGRAMS = poundsToKilograms(15)

export const CARRY_OFFSETS_METRES: readonly number[] = CARRY_OFFSETS_INCHES.map(inchesToMetres)
export const CARRY_ANGLES_RADIANS: readonly number[] = CARRY_ANGLES_DEGREES.map(degreesToRadians)
export const CARRY_SPEEDS_METRES_PER_SECOND: readonly number[] = CARRY_SPEEDS_MPH.map(mphToMetresPerSecond)
export const CARRY_CELLS = CARRY_SPEEDS_MPH.length * CARRY_ANGLES_DEGREES.length * CARRY_OFFSETS_INCHES.length

export const carryCell = (speed: number, angle: number, offset: number): number =>
  (speed * CARRY_ANGLES_DEGREES.length + angle) * CARRY_OFFSETS_INCHES.length + offset

/** Offsets of a straight ball at a spare, the whole width of the lane. */
export const SPARE_OFFSETS_INCHES: readonly number[] = evenly(-20.25, 20.25, 0.75)
export const SPARE_SPEED_MPH = 15.75
/** Steepest line of a straight ball across the lane, from one corner of it towards the other. */
export const SPARE_STEEPEST_DEGREES = 1.5
const SPARE_STEEPEST_AT_INCHES = 18

/** Angle of a straight spare ball: thrown across the lane, from the left at pins on the right. */
export function spareAngleRadians(offsetInches: number): number {
  const share = Math.max(-1, Math.min(1, offsetInches / SPARE_STEEPEST_AT_INCHES))
  return degreesToRadians(-SPARE_STEEPEST_DEGREES * share)
}

/** One of each mirrored pair of leaves, ascending; the full rack is among them. */
export const CANONICAL_LEAVES: readonly number[] = Array.from({ length: FULL_RACK }, (_, index) => index + 1).filter(
  (mask) => mask <= mirrorMask(mask),
)

/** Throws at each offset of a spare; leaves of few pins are met most often. */
export const spareThrows = (pins: number): number => (pins <= 3 ? 64 : 16)

/**
 * Fingerprint (32-bit FNV-1a) of everything the table depends on: the physics' version, the materials and the grids.
 */
export function carryFingerprint(): number {
  const text = JSON.stringify([
    RACK_VERSION,
    USUAL_MATERIALS,
    USUAL_SPREAD,
    CARRY_OFFSETS_INCHES,
    CARRY_ANGLES_DEGREES,
    CARRY_SPEEDS_MPH,
    CARRY_BALL_KILOGRAMS,
    SPARE_OFFSETS_INCHES,
    SPARE_SPEED_MPH,
    SPARE_STEEPEST_DEGREES,
    SPARE_STEEPEST_AT_INCHES,
  ])
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index++) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  }
  return hash >>> 0
}
