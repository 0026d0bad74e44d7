import type { KnownGrade } from './grade.js'

/** A gap has to be this many standard errors, and this many pins, before it is called a loss. */
const CALLED_STANDARD_ERRORS = 1.64
const CALLED_PINS = 0.1

/**
 * Pins a choice is said to give away: nothing where the gap to the best one is too close to call (a one-sided 95 %
 * bound of its own sampling error, or a tenth of a pin).
 */
export function calledPins({ givenAwayPins, standardErrorPins }: KnownGrade): number {
  return givenAwayPins > Math.max(CALLED_STANDARD_ERRORS * standardErrorPins, CALLED_PINS) ? givenAwayPins : 0
}
