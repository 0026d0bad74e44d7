/** A ball on its way into the pins, as it crosses the head pin's row. */
export interface RackThrow {
  /** How far the ball's centre passes to the right of the head pin spot. */
  readonly offsetMetres: number
  /** Positive when the ball moves from right to left. */
  readonly angleRadians: number
  readonly speedMetresPerSecond: number
  readonly ballMassKilograms: number
  /** Mask of the pins that stand. */
  readonly standing: number
}

export interface RackResult {
  /** Mask of the pins left standing. */
  readonly standing: number
  /** Mask of the pins the ball itself touched. */
  readonly touched: number
  /** How far right of the head pin spot the ball left the deck; NaN when it never did. */
  readonly exitOffsetMetres: number
  readonly steps: number
}
