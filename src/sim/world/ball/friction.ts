/**
 * Friction between cover and lane, as one smooth law of the film between them and the speed of the slip. No law has
 * been published; this one has the shape boundary and mixed lubrication give. What carries the film is the speed at
 * which the surfaces draw it in, the mean of lane and cover, which hardly changes while a ball skids: so the share of the cover
 * that touches the lane follows the film alone. What touches rubs nearly as on a dry lane; what floats drags, the more the
 * thinner the film it shears.
 */
export interface FrictionLaw {
  /** On a dry lane, as the slip dies away. */
  readonly dryFriction: number
  /** Floating on thick oil. */
  readonly oiledFriction: number
  /** Film in micrometres at which half of the cover still touches. */
  readonly halfFloatingMicrons: number
}

/** Share of dry friction lost per m/s of slip. */
const DRY_FADING_PER_METRE_PER_SECOND = 0.03
/** Drag on a vanishing film beyond that on thick oil, as a multiple of it. */
const THIN_FILM_DRAG = 4
/** Film on which that excess has fallen to half. */
const THIN_FILM_MICRONS = 1
/** ln 2 / 8: the touching share is an eighth power, see below. */
const EIGHTH_OF_LN_2 = 0.0866433975699932

/** The law with its divisions done beforehand, for the integrator's loop. */
export interface PreparedFriction {
  readonly dryFriction: number
  /** Dry friction lost per m/s of slip. */
  readonly dryFading: number
  readonly oiledFriction: number
  readonly thinFilmFriction: number
  /** ln 2 / 8 over the square of the half-floating film. */
  readonly floatingPerSquareMicron: number
}

export function prepareFriction({ dryFriction, oiledFriction, halfFloatingMicrons }: FrictionLaw): PreparedFriction {
  return {
    dryFriction,
    dryFading: DRY_FADING_PER_METRE_PER_SECOND * dryFriction,
    oiledFriction,
    thinFilmFriction: THIN_FILM_DRAG * THIN_FILM_MICRONS * oiledFriction,
    floatingPerSquareMicron: EIGHTH_OF_LN_2 / (halfFloatingMicrons * halfFloatingMicrons),
  }
}

/**
 * Coefficient of friction under `filmMicrons` of oil at a slip of `slip` m/s; both at least 0, slip below about 20 m/s.
 * The touching share falls with the film as 2^−(film/half)², written as the −8th power of the parabola that exp(u/8) begins
 * with, so that the loop needs one division and no exponential.
 */
export function frictionCoefficient(law: PreparedFriction, filmMicrons: number, slip: number): number {
  const eighth = filmMicrons * filmMicrons * law.floatingPerSquareMicron
  const parabola = 1 + eighth * (1 + 0.5 * eighth)
  const thin = filmMicrons + THIN_FILM_MICRONS
  const inverse = 1 / (parabola * thin)
  let touching = inverse * thin
  touching *= touching
  touching *= touching
  touching *= touching
  const oiled = law.oiledFriction + law.thinFilmFriction * inverse * parabola
  return oiled + (law.dryFriction - law.dryFading * slip - oiled) * touching
}
