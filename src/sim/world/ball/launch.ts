/**
 * A ball as it meets the lane. Right-handed frame: x down the lane from the foul line, y to the left from the right
 * edge. Angles come as sine and cosine so that a throw can be made without trigonometry in the loop.
 */
export interface Launch {
  /** Where the ball touches down, metres past the foul line. */
  readonly startMetres: number
  readonly lateralMetres: number
  /** Unit vector of travel. */
  readonly directionX: number
  readonly directionY: number
  readonly speedMetresPerSecond: number
  readonly spinRadiansPerSecond: number
  /** Axis rotation: 0 rolls end over end, 90 degrees spins square to the travel and pulls to the left. */
  readonly sineRotation: number
  readonly cosineRotation: number
  /** Axis tilt: the part of the spin about the vertical, which point friction cannot touch. */
  readonly sineTilt: number
  readonly cosineTilt: number
}

/** What a path came to; one mutable record is used again and again so that the loop allocates nothing. */
export interface RollOutcome {
  /** Metres from the right edge at the headpin's row; beyond the lane where the ball went into a gutter. */
  lateralAtPinsMetres: number
  /** dy/dx at the headpin's row. */
  tangentAtPins: number
  speedAtPinsMetresPerSecond: number
  /** From the foul line. */
  timeToPinsSeconds: number
  /** Speed in m/s of the contact point over the lane at the headpin's row; 0 once the ball rolls. */
  slipAtPins: number
  /** Where friction first reaches a third of the ball's dry friction: the end of the skid. Infinity if it never does. */
  hookStartMetres: number
  /** Where the slip ends. Infinity if the ball still slips at the pins. */
  rollStartMetres: number
  /** The rightmost point of the path. */
  breakpointMetres: number
  breakpointLateralMetres: number
  /** Where the contact point left the lane over an edge, or Infinity. */
  leftLaneMetres: number
}

/** A blank outcome to be filled by rollBall. */
export function newRollOutcome(): RollOutcome {
  return {
    lateralAtPinsMetres: Number.NaN,
    tangentAtPins: Number.NaN,
    speedAtPinsMetresPerSecond: Number.NaN,
    timeToPinsSeconds: Number.NaN,
    slipAtPins: Number.NaN,
    hookStartMetres: Number.NaN,
    rollStartMetres: Number.NaN,
    breakpointMetres: Number.NaN,
    breakpointLateralMetres: Number.NaN,
    leftLaneMetres: Number.NaN,
  }
}
