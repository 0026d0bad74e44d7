/**
 * What a throw's result fell short of the best that could have been done with the oil in sight, in expected game pins,
 * split into five parts that add up to it exactly; above 0 is lost. The identity is a telescoping sum, so it holds
 * whatever the five worths are:
 *
 *     Q(best known) − R = given away + pattern swing + hidden + delivery + carry
 *
 * Q: expected worth on the true oil over the bowler's misses. R: worth of what the throw left.
 */
export interface LedgerTerms {
  /** What the choice cost from what had been seen: the grade, the only part that is charged. */
  readonly givenAwayPins: number
  /** How much more or less it turned out to lose on the oil as it was; mean 0 when the belief is right. */
  readonly patternSwingPins: number
  /** What not seeing the oil cost even the best choice; never below 0. */
  readonly hiddenPins: number
  /** What this delivery lost against the mean delivery of the same choice; mean 0. */
  readonly deliveryPins: number
  /** What the pins did against the mean result of the same ball into them; mean 0. */
  readonly carryPins: number
}

/** The five worths that a throw's account stands on, all in expected game pins on one footing. */
export interface ThrowWorths {
  /** Of the best choice with the oil in sight, on the oil as it was. */
  readonly bestKnown: number
  /** Of the best choice from what had been seen, on the oil as it was. */
  readonly bestFair: number
  /** Of the choice made, on the oil as it was. */
  readonly choice: number
  /** Of the ball as it was delivered, before the pins answered. */
  readonly delivered: number
  /** Of what it left. */
  readonly result: number
}

export const LEDGER_TERMS = [
  'givenAwayPins',
  'patternSwingPins',
  'hiddenPins',
  'deliveryPins',
  'carryPins',
] as const satisfies readonly (keyof LedgerTerms)[]

/** Splits one throw. @param givenAwayPins what the choice is charged, never below 0 */
export function ledgerOf(givenAwayPins: number, worths: ThrowWorths): LedgerTerms {
  const { bestKnown, bestFair, choice, delivered, result } = worths
  return {
    givenAwayPins,
    patternSwingPins: bestFair - choice - givenAwayPins,
    hiddenPins: bestKnown - bestFair,
    deliveryPins: choice - delivered,
    carryPins: delivered - result,
  }
}

const EMPTY_LEDGER: LedgerTerms = {
  givenAwayPins: 0,
  patternSwingPins: 0,
  hiddenPins: 0,
  deliveryPins: 0,
  carryPins: 0,
}

export function addLedgers(ledgers: readonly LedgerTerms[]): LedgerTerms {
  return ledgers.reduce<LedgerTerms>(
    (sum, one) => ({
      givenAwayPins: sum.givenAwayPins + one.givenAwayPins,
      patternSwingPins: sum.patternSwingPins + one.patternSwingPins,
      hiddenPins: sum.hiddenPins + one.hiddenPins,
      deliveryPins: sum.deliveryPins + one.deliveryPins,
      carryPins: sum.carryPins + one.carryPins,
    }),
    EMPTY_LEDGER,
  )
}

/** All five parts together: pins short of the best with the oil in sight. */
export function shortfallOf(ledger: LedgerTerms): number {
  return LEDGER_TERMS.reduce((sum, term) => sum + ledger[term], 0)
}
