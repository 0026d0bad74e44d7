import { cosine, PI, sine } from '../../exact-math.js'
import { degreesToRadians, inchesToMetres } from '../../units.js'

/** The three principal radii of gyration and the spin axis at release, in the ball's own frame. */
export interface Core {
  readonly lowMetres: number
  readonly middleMetres: number
  readonly highMetres: number
  /** Unit vector of the spin axis: along the low (pin), middle and high axis. */
  readonly spinAxis: readonly [number, number, number]
}

/** From the spin axis' foot on the low axis' equator to the high axis; layouts put it near 45 degrees (common practice). */
const HIGH_AXIS_ANGLE_RADIANS = degreesToRadians(45)

/** Track width at which a lap laid beside the last half overlaps it (chosen so that reactions look right). */
const OVERLAP_METRES = inchesToMetres(0.22)

const square = (value: number): number => value * value

/** The core of a ball with the given low RG, differentials and angle from spin axis to pin. */
export function coreOf(
  lowMetres: number,
  differentialMetres: number,
  intermediateDifferentialMetres: number,
  pinAngleRadians: number,
): Core {
  const highMetres = lowMetres + differentialMetres
  const away = sine(pinAngleRadians)
  return {
    lowMetres,
    middleMetres: highMetres - intermediateDifferentialMetres,
    highMetres,
    spinAxis: [cosine(pinAngleRadians), away * sine(HIGH_AXIS_ANGLE_RADIANS), away * cosine(HIGH_AXIS_ANGLE_RADIANS)],
  }
}

/** Radius of gyration about the spin axis: 1/rg² = Σ axis²/rg_i², the moment with which angular momentum answers spin. */
export function spinRadiusOfGyration(core: Core): number {
  const [low, middle, high] = core.spinAxis
  const inverse = square(low / core.lowMetres) + square(middle / core.middleMetres) + square(high / core.highMetres)
  return 1 / Math.sqrt(inverse)
}

/**
 * Metres the track moves over the cover in one revolution, by free precession of the core:
 * 2πR·I_s·|l × I⁻¹l| for angular momentum along the unit vector l (rigid-body mechanics).
 */
export function trackGap(core: Core, ballRadiusMetres: number): number {
  const [low, middle, high] = core.spinAxis
  const spin = square(spinRadiusOfGyration(core))
  const a = low / square(core.lowMetres)
  const b = middle / square(core.middleMetres)
  const c = high / square(core.highMetres)
  const x = middle * c - high * b
  const y = high * a - low * c
  const z = low * b - middle * a
  return 2 * PI * ballRadiusMetres * spin * Math.sqrt(x * x + y * y + z * z)
}

/** Share of the cover under the ball that has not met the lane before: 0 without flare, near 1 when laps lie apart. */
export function freshCoverShare(trackGapMetres: number): number {
  const laps = trackGapMetres / OVERLAP_METRES
  return (laps * laps) / (1 + laps * laps)
}
