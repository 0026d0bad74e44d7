import { PIN_COUNT } from './leaves.js'

/** Index of the ball among the bodies; pins are 0 to 9. */
export const BALL = PIN_COUNT
export const BODY_COUNT = PIN_COUNT + 1

/** A pin at rest costs nothing until something touches it; a body in the pit is out of the world. */
export const ASLEEP = 0
export const AWAKE = 1
export const GONE = 2

/** What the inner loops need of the above, to be taken out once a call: reading an import is not free everywhere. */
export const BODIES = {
  ball: BALL,
  bodyCount: BODY_COUNT,
  pinCount: PIN_COUNT,
  asleep: ASLEEP,
  awake: AWAKE,
  gone: GONE,
}

/**
 * Ten pins and the ball as rigid bodies with an axis of symmetry, x down-lane from the head pin, y to the left, z up.
 * Vectors lie one body after another, three numbers each. Only the axis of a body is kept, not its turn about it,
 * because nothing depends on the latter.
 */
export interface RackWorld {
  readonly place: Float64Array
  /** From base to head; unit vectors. */
  readonly axis: Float64Array
  readonly velocity: Float64Array
  readonly spin: Float64Array
  readonly inverseMass: Float64Array
  readonly acrossInertia: Float64Array
  readonly alongInertia: Float64Array
  readonly state: Uint8Array
  /** Steps for which a standing pin has been still. */
  readonly stillSteps: Uint16Array
  /** For each pair of pins, the step before which they cannot meet. */
  readonly pairRest: Int32Array
}

export function newRackWorld(): RackWorld {
  return {
    place: new Float64Array(BODY_COUNT * 3),
    axis: new Float64Array(BODY_COUNT * 3),
    velocity: new Float64Array(BODY_COUNT * 3),
    spin: new Float64Array(BODY_COUNT * 3),
    inverseMass: new Float64Array(BODY_COUNT),
    acrossInertia: new Float64Array(BODY_COUNT),
    alongInertia: new Float64Array(BODY_COUNT),
    state: new Uint8Array(BODY_COUNT),
    stillSteps: new Uint16Array(BODY_COUNT),
    pairRest: new Int32Array(PIN_COUNT * PIN_COUNT),
  }
}
