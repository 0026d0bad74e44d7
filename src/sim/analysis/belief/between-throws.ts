import type { RollOutcome } from '../../world/ball/launch.js'

/**
 * Visits the points that are judged on a line through `count` rolled throws: each throw, and what divides the way to the
 * next into `between` parts; `share` is how far the point lies towards the next.
 */
export function forEachBetween(
  count: number,
  between: number,
  visit: (throwIndex: number, next: number, share: number) => void,
): void {
  for (let index = 0; index < count - 1; index++)
    for (let part = 0; part < between; part++) visit(index, index + 1, part / between)
  visit(count - 1, count - 1, 0)
}

/** Writes what the eye would see of a throw between two that were rolled. */
export function blendOutcomes(first: RollOutcome, second: RollOutcome, share: number, into: RollOutcome): void {
  into.lateralAtPinsMetres = between(first.lateralAtPinsMetres, second.lateralAtPinsMetres, share)
  into.tangentAtPins = between(first.tangentAtPins, second.tangentAtPins, share)
  into.breakpointMetres = between(first.breakpointMetres, second.breakpointMetres, share)
  into.breakpointLateralMetres = between(first.breakpointLateralMetres, second.breakpointLateralMetres, share)
}

function between(a: number, b: number, share: number): number {
  return a + share * (b - a)
}
