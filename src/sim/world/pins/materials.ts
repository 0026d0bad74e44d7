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
  pinPinRestitution: 0.66,
  pinDeckRestitution: 0.35,
  wallRestitution: 0.42,
  ballPinFriction: 0.16,
  pinPinFriction: 0.28,
  pinDeckFriction: 0.3,
  ballDeckFriction: 0.12,
  wallFriction: 0.25,
}

/** No two bodies part faster than at this share of their approach, however lively their pins. */
export const LIVELIEST_RESTITUTION = 0.95

/** How one rack differs from the next, as standard deviations unless said otherwise. */
export interface RackSpread {
  /** Of a pin off its spot, along and across, for most pins. */
  readonly spotMetres: number
  /** Share by which a pin one such deviation off stands farther still; grows with the square, so few stand far off. */
  readonly spotTail: number
  /** No pin stands farther off its spot than this, along or across. */
  readonly farthestSpotMetres: number
  /** Of the whole rack off its place across the lane. */
  readonly rackAcrossMetres: number
  /** Of the axis that the ball rolls about, off square to its path. */
  readonly ballTurnRadians: number
  /** The rest are shares of the usual value; of single pins the first two, of the whole rack the others. */
  readonly pinMass: number
  readonly pinLiveliness: number
  readonly ballPinRestitution: number
  readonly pinPinRestitution: number
  readonly wallRestitution: number
  readonly ballPinFriction: number
  readonly pinPinFriction: number
  readonly pinDeckFriction: number
  readonly ballDeckFriction: number
}

/**
 * A choice of the model, within what the rules leave open: the head pin spot may lie half an inch off, the corner
 * spots a quarter of an inch across (2 1/2 to 3 in from the lane's edge), pins of a set may differ by four ounces, and
 * balls by 0.65 to 0.78 in restitution. No spread of any was found measured.
 */
export const USUAL_SPREAD: RackSpread = {
  spotMetres: 0.22 * 0.0254,
  spotTail: 0.3,
  farthestSpotMetres: 0.5 * 0.0254,
  rackAcrossMetres: 0.04 * 0.0254,
  ballTurnRadians: 0.1,
  pinMass: 0.015,
  pinLiveliness: 0.1,
  ballPinRestitution: 0.04,
  pinPinRestitution: 0.06,
  wallRestitution: 0.1,
  ballPinFriction: 0.15,
  pinPinFriction: 0.15,
  pinDeckFriction: 0.12,
  ballDeckFriction: 0.2,
}
