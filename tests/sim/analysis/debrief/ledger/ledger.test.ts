import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addLedgers,
  LEDGER_TERMS,
  ledgerOf,
  shortfallOf,
} from '../../../../../src/sim/analysis/debrief/ledger/ledger.js'

const pins = fc.double({ min: -60, max: 60, noNaN: true })
const worths = fc.record({ bestKnown: pins, bestFair: pins, choice: pins, delivered: pins, result: pins })

describe('the ledger of a throw', () => {
  // Telescoping sum, as in advantage-sum estimators (Zinkevich et al., AAAI 2006): it closes whatever the worths are.
  it('adds up to what the result fell short of the best, to 1e-9', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), worths, (givenAway, five) => {
        expect(Math.abs(shortfallOf(ledgerOf(givenAway, five)) - (five.bestKnown - five.result))).toBeLessThan(1e-9)
      }),
      { numRuns: 2000 },
    )
  })

  it('adds up over any number of throws', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(pins, worths), { maxLength: 60 }), (throws) => {
        const sum = addLedgers(throws.map(([givenAway, five]) => ledgerOf(givenAway, five)))
        const short = throws.reduce((total, [, { bestKnown, result }]) => total + bestKnown - result, 0)
        expect(Math.abs(shortfallOf(sum) - short)).toBeLessThan(1e-9)
      }),
    )
  })

  // Worked by hand: the best known line was worth +3, the best fair one +2, the choice +0.5 on this oil and 1.0 behind
  // over the belief; the ball came in worth −4 and left what is worth −6.
  it('names each part as worked out by hand', () => {
    const ledger = ledgerOf(1, { bestKnown: 3, bestFair: 2, choice: 0.5, delivered: -4, result: -6 })
    expect(LEDGER_TERMS.map((term) => ledger[term])).toEqual([1, 0.5, 1, 4.5, 2])
    expect(shortfallOf(ledger)).toBe(9)
  })
})
