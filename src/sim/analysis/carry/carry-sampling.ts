import { stream } from '../../random.js'
import { inchesToMetres, mphToMetresPerSecond } from '../../units.js'
import { countPins, FULL_RACK, mirrorMask } from '../../world/pins/leaves.js'
import { drawRackNature } from '../../world/pins/nature.js'
import { throwAtRack } from '../../world/pins/rack.js'
import {
  CARRY_ANGLES_RADIANS,
  CARRY_BALL_KILOGRAMS,
  CARRY_OFFSETS_METRES,
  CARRY_SPEEDS_METRES_PER_SECOND,
  carryCell,
  SPARE_OFFSETS_INCHES,
  SPARE_SPEED_MPH,
  spareAngleRadians,
  spareThrows,
} from './carry-grid.js'

/** Leaves of one cell with how often each came, commonest first. */
export type LeaveCounts = readonly (readonly [mask: number, count: number])[]

/**
 * Throws one cell of the carry table. Every throw has its own keyed rack, so a cell comes out the same whenever and
 * in whatever order it is made. At angle 0 the two sides are mirror images, so only offsets to the right are thrown.
 */
export function sampleCarryCell(speed: number, angle: number, offset: number, throws: number): LeaveCounts {
  const mirrored = angle === 0 && CARRY_OFFSETS_METRES[offset]! < 0
  const thrownOffset = mirrored ? CARRY_OFFSETS_METRES.length - 1 - offset : offset
  const cell = carryCell(speed, angle, thrownOffset)
  const counts = new Map<number, number>()
  for (let index = 0; index < throws; index++) {
    const nature = drawRackNature(stream({ seed: 'carry', game: 0, frame: cell, ball: 1, purpose: 'rack', index }))
    const { standing } = throwAtRack(
      {
        offsetMetres: CARRY_OFFSETS_METRES[thrownOffset]!,
        angleRadians: CARRY_ANGLES_RADIANS[angle]!,
        speedMetresPerSecond: CARRY_SPEEDS_METRES_PER_SECOND[speed]!,
        ballMassKilograms: CARRY_BALL_KILOGRAMS,
        standing: FULL_RACK,
      },
      nature,
    )
    const leave = mirrored ? mirrorMask(standing) : standing
    counts.set(leave, (counts.get(leave) ?? 0) + 1)
  }
  return [...counts].sort((first, second) => second[1] - first[1] || first[0] - second[0])
}

export interface SpareSample {
  readonly conversions: number
  /** Pins felled, over all throws. */
  readonly pins: number
}

/** Throws one offset of a spare's curve. */
export function sampleSpare(mask: number, offset: number): SpareSample {
  const standingBefore = countPins(mask)
  const throws = spareThrows(standingBefore)
  const offsetInches = SPARE_OFFSETS_INCHES[offset]!
  let conversions = 0
  let pins = 0
  for (let index = 0; index < throws; index++) {
    const nature = drawRackNature(stream({ seed: 'spare', game: mask, frame: offset, ball: 2, purpose: 'rack', index }))
    const { standing } = throwAtRack(
      {
        offsetMetres: inchesToMetres(offsetInches),
        angleRadians: spareAngleRadians(offsetInches),
        speedMetresPerSecond: mphToMetresPerSecond(SPARE_SPEED_MPH),
        ballMassKilograms: CARRY_BALL_KILOGRAMS,
        standing: mask,
      },
      nature,
    )
    if (standing === 0) conversions++
    pins += standingBefore - countPins(standing)
  }
  return { conversions, pins }
}
