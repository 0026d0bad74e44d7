/**
 * Materials of ball, pin, deck and wall. No measured values are published beyond the usual modelling range of 0.6 to
 * 0.8 for restitution; these are chosen so that the strike map agrees with the published pin-carry study.
 */
export interface Materials {
  readonly ballPinRestitution: number
  readonly pinPinRestitution: number
  readonly pinDeckRestitution: number
  readonly wallRestitution: number
  readonly ballPinFriction: number
  readonly pinPinFriction: number
  readonly pinDeckFriction: number
  readonly ballDeckFriction: number
  readonly wallFriction: number
}

export const USUAL_MATERIALS: Materials = {
  ballPinRestitution: 0.65,
  pinPinRestitution: 0.55,
  pinDeckRestitution: 0.35,
  wallRestitution: 0.5,
  ballPinFriction: 0.12,
  pinPinFriction: 0.18,
  pinDeckFriction: 0.3,
  ballDeckFriction: 0.12,
  wallFriction: 0.25,
}

/** Spread of one rack to the next, as standard deviations; a choice of the model, no source. */
export const RACK_SPREAD = {
  /** Of a pin off its spot, along and across. */
  spotMetres: 0.12 * 0.0254,
  /** The rest are shares of the usual value. */
  pinMass: 0.015,
  ballPinRestitution: 0.075,
  pinPinRestitution: 0.12,
  pinDeckFriction: 0.22,
  ballPinFriction: 0.3,
  pinPinFriction: 0.3,
} as const
