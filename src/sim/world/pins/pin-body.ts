import { inchesToMetres, poundsToKilograms } from '../../units.js'
import { PIN_HEIGHT_INCHES, PIN_OUTLINE_INCHES, turnPin } from './pin-profile.js'

const solid = turnPin()

/** Rule: 3 lb 6 oz to 3 lb 10 oz. */
export const PIN_MASS_KILOGRAMS = poundsToKilograms(3.5)
export const PIN_CENTRE_OF_GRAVITY_METRES = solid.centreOfGravityMetres
export const PIN_AXIAL_GYRATION_METRES = solid.axialGyrationMetres
export const PIN_TRANSVERSE_GYRATION_METRES = solid.transverseGyrationMetres
export const PIN_BASE_RADIUS_METRES = inchesToMetres(PIN_OUTLINE_INCHES[0]![1])

/**
 * The pin's skin for contact: spheres and capsules strung on its axis, [from, to, radius] in inches above the base.
 * They follow the outline to within 0.03 in along belly and head and 0.2 in elsewhere.
 */
const ELEMENTS_INCHES: readonly (readonly [from: number, to: number, radius: number])[] = [
  [2.105, 2.105, 1.958],
  [4.2, 5.2, 2.383],
  [6.16, 6.16, 2.148],
  [7.6, 7.6, 1.6],
  [9.2, 12, 0.92],
  [13, 13.727, 1.273],
]

/** The skin as distances along the axis from the centre of gravity, metres; one entry an element. */
export interface PinSkin {
  readonly count: number
  readonly from: Float64Array
  readonly to: Float64Array
  readonly radius: Float64Array
  readonly lowest: number
  readonly highest: number
  readonly bellyRadius: number
  /** No point of the pin is farther than this from its centre of gravity. */
  readonly reach: number
  readonly baseRadius: number
  readonly centreOfGravity: number
}

const fromCentre = (inches: number): number => inchesToMetres(inches) - PIN_CENTRE_OF_GRAVITY_METRES
const from = Float64Array.from(ELEMENTS_INCHES, ([low]) => fromCentre(low))
const to = Float64Array.from(ELEMENTS_INCHES, ([, high]) => fromCentre(high))
const radius = Float64Array.from(ELEMENTS_INCHES, ([, , size]) => inchesToMetres(size))

export const PIN_SKIN: PinSkin = {
  count: ELEMENTS_INCHES.length,
  from,
  to,
  radius,
  lowest: from[0]!,
  highest: to[to.length - 1]!,
  bellyRadius: radius[1]!,
  reach: fromCentre(PIN_HEIGHT_INCHES),
  baseRadius: PIN_BASE_RADIUS_METRES,
  centreOfGravity: PIN_CENTRE_OF_GRAVITY_METRES,
}
