/**
 * Friction between cover and lane, as one smooth law of the film between them and the speed of the slip. No law has
 * been published; this one has the shape lubrication gives: on a dry lane or at a crawl the cover touches the lane, on a
 * thick film at speed it floats, and between the two the film has to be compared with the cover's roughness.
 */
export interface FrictionLaw {
  /** On a dry lane, as the slip dies away. */
  readonly dryFriction: number
  /** Floating on oil. */
  readonly oiledFriction: number
  /** Film in micrometres at which the cover half floats when slipping at FLOATING_SPEED. */
  readonly halfFloatingMicrons: number
}

const FLOATING_SPEED_METRES_PER_SECOND = 5
/** Share of dry friction lost per m/s of slip. */
const DRY_FADING_PER_METRE_PER_SECOND = 0.03

/** The law with its divisions done beforehand, for the integrator's loop. */
export interface PreparedFriction {
  readonly dryFriction: number
  /** Share of it lost per m/s of slip. */
  readonly dryFading: number
  readonly oiledFriction: number
  readonly floatingPerCubicMicron: number
}

export function prepareFriction(law: FrictionLaw): PreparedFriction {
  const half = law.halfFloatingMicrons
  return {
    dryFriction: law.dryFriction,
    dryFading: DRY_FADING_PER_METRE_PER_SECOND,
    oiledFriction: law.oiledFriction,
    floatingPerCubicMicron: 1 / (half * half * half * FLOATING_SPEED_METRES_PER_SECOND),
  }
}

/** Coefficient of friction under `filmMicrons` of oil at a slip of `slip` m/s; both at least 0, slip below about 20 m/s. */
export function frictionCoefficient(law: PreparedFriction, filmMicrons: number, slip: number): number {
  const floating = filmMicrons * filmMicrons * filmMicrons * slip * law.floatingPerCubicMicron
  const touching = law.dryFriction * (1 - law.dryFading * slip)
  return law.oiledFriction + (touching - law.oiledFriction) / (1 + floating)
}
