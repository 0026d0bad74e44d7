import type { Contact } from '../../world/block/types.js'
import type { ContactChance } from '../grade/contact-chances.js'

/** A reaction called before a throw, and what came of it. */
export interface CalledThrow {
  readonly called: Contact
  /** How sure the player said to be, 0 to 1. */
  readonly sureShare: number
  readonly came: Contact
  /** How the throw was to be expected to meet the rack from what had been seen. */
  readonly chances: readonly ContactChance[]
}

/**
 * How good calls were. Brier scores are mean squared distances between the chance told for the called reaction and
 * whether it came (1 or 0): 0 is perfect, and calling everything a coin toss scores 0.25 (Brier, Verification of forecasts
 * expressed in terms of probability, Monthly Weather Review 78, 1950, for a single event).
 */
export interface CallScore {
  readonly count: number
  readonly right: number
  /** How many would have been right, had the player been right as often as they were sure. */
  readonly claimed: number
  /** How many of these calls were to be expected to come right, from what had been seen. */
  readonly toExpect: number
  /** The same, had the likeliest reaction been called each time. */
  readonly toExpectOfLikeliest: number
  readonly brier: number
  /** Of one who makes the same calls and is as sure as could be known. */
  readonly brierByKnown: number
}

/** The chance that a throw would meet the rack as called. */
export const chanceOf = (contact: Contact, chances: readonly ContactChance[]): number =>
  chances.find((one) => one.contact === contact)?.chance ?? 0

export const isRight = ({ called, came }: CalledThrow): boolean => called === came

/** Scores calls; null where none was made. */
export function scoreCalls(calls: readonly CalledThrow[]): CallScore | null {
  if (calls.length === 0) return null
  const sum = (of: (call: CalledThrow) => number): number => calls.reduce((all, call) => all + of(call), 0)
  const known = ({ called, chances }: CalledThrow): number => chanceOf(called, chances)
  const missOf = (told: number, call: CalledThrow): number => {
    const miss = told - (isRight(call) ? 1 : 0)
    return miss * miss
  }
  return {
    count: calls.length,
    right: sum((call) => (isRight(call) ? 1 : 0)),
    claimed: sum(({ sureShare }) => sureShare),
    toExpect: sum(known),
    toExpectOfLikeliest: sum(({ chances }) => chances[0]?.chance ?? 0),
    brier: sum((call) => missOf(call.sureShare, call)) / calls.length,
    brierByKnown: sum((call) => missOf(known(call), call)) / calls.length,
  }
}
