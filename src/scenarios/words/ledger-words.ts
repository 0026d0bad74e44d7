import type { LedgerTerms } from '../../sim/analysis/debrief/ledger/ledger.js'

/** Each part of the ledger as it is headed, and what it is. */
export const LEDGER_PARTS: Readonly<Record<keyof LedgerTerms, readonly [heading: string, about: string]>> = {
  givenAwayPins: ['cost', 'what your choice cost against the best from what you had seen: only this is graded'],
  patternSwingPins: ['real oil', 'how the real oil suited your choice'],
  hiddenPins: ['unseen', 'cost of not seeing the oil, to anyone'],
  deliveryPins: ['delivery', 'this delivery against your usual one'],
  carryPins: ['carry', 'how the pins fell for that ball'],
}

/** Whom the ledger holds a throw against, and how its signs are read. */
export const LEDGER_LEAD = 'against the best if you could see the oil; + won, - lost'
/** The same of one choice. */
export const SHORT_OF_THE_BEST = 'short of the best if you could see the oil'
