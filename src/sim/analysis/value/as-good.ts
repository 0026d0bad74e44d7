/**
 * The one rule by which choices are called as good as each other, and by which a loss is charged. A loss of at most
 * tau = max(1.64 standard errors, a tenth of a pin) cannot be told from none and costs nothing; a larger one is charged whole.
 * (1.64: 95 % point of the normal distribution, one-sided.)
 */
const STANDARD_ERRORS = 1.64
const LEAST_PINS = 0.1

/** Tau: the largest loss, in pins, that cannot be told from none. */
export function tooCloseToCall(standardErrorPins: number): number {
  return Math.max(STANDARD_ERRORS * standardErrorPins, LEAST_PINS)
}

/** What a choice loses in expectation against the best one, never below 0, with one standard error and tau; in game pins. */
export interface Loss {
  readonly lostPins: number
  readonly standardErrorPins: number
  readonly tooCloseToCallPins: number
}

/** A loss with its tau. @param pins how much more the best is worth; below 0 is none */
export function lossOf(pins: number, standardErrorPins: number): Loss {
  return { lostPins: Math.max(0, pins), standardErrorPins, tooCloseToCallPins: tooCloseToCall(standardErrorPins) }
}

/** Whether a choice is as good as the best. */
export function isAsGood({ lostPins, tooCloseToCallPins }: Loss): boolean {
  return lostPins <= tooCloseToCallPins
}

/** What a loss is charged, in pins: nothing up to tau, beyond it the whole. */
export function chargeOf(loss: Loss): number {
  return isAsGood(loss) ? 0 : loss.lostPins
}
