const STANDARD_ERRORS = 1.64
const LEAST_PINS = 0.1

/** The gap below which two choices are not told apart: 1.64 standard errors, at least a tenth of a pin. */
export function tooCloseToCall(standardErrorPins: number): number {
  return Math.max(STANDARD_ERRORS * standardErrorPins, LEAST_PINS)
}

/** Pins given away: what is lost by the choice, or by the best one cannot tell from it, beyond what is too close to call. */
export function givenAway(lostPins: number, indistinguishableLostPins: number, tooClosePins: number): number {
  return Math.max(0, Math.min(lostPins, indistinguishableLostPins) - tooClosePins)
}
