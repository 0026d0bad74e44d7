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
  pinPinRestitution: 0.6,
  pinDeckRestitution: 0.35,
  wallRestitution: 0.5,
  ballPinFriction: 0.12,
  pinPinFriction: 0.19,
  pinDeckFriction: 0.3,
  ballDeckFriction: 0.12,
  wallFriction: 0.25,
}

/** How one rack differs from the next, as standard deviations. */
export interface RackSpread {
  /** Of a pin off its spot, along and across. */
  readonly spotMetres: number
  /** The rest are shares of the usual value. */
  readonly pinMass: number
  readonly ballPinRestitution: number
  readonly pinPinRestitution: number
  readonly pinDeckFriction: number
  readonly ballPinFriction: number
  readonly pinPinFriction: number
}

/** A choice of the model, no source. */
export const USUAL_SPREAD: RackSpread = {
  spotMetres: 0.18 * 0.0254,
  pinMass: 0.015,
  ballPinRestitution: 0.075,
  pinPinRestitution: 0.12,
  pinDeckFriction: 0.22,
  ballPinFriction: 0.3,
  pinPinFriction: 0.3,
}
