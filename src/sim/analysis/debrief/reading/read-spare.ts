import type { BlockState, ThrowRecord } from '../../../world/block/types.js'
import { mirrorMask } from '../../../world/pins/leaves.js'
import type { FairSpareSearch } from '../../grade/fair-spare.js'
import { type SparePrices, sparePrices } from '../../grade/spare-grade.js'
import { lastFirstBall } from '../../shots/least-move.js'
import type { TrueOilPrices } from '../ledger/throw-worths.js'
import { bentSpareWorth } from './bent-worths.js'
import { doubtPhysics } from './model-doubt.js'
import { withParts } from './part-shares.js'
import type { SpareReading, Verdict } from './reading.js'

/** A throw at a spare that counted, and what is worked out of it where it is needed. */
export interface SpareThrown {
  /** The block as it stood before. */
  readonly before: BlockState
  readonly record: ThrowRecord
  readonly verdict: Verdict
  readonly openSearch: () => FairSpareSearch
  readonly onTrueOil: TrueOilPrices
}

/** What a throw at a spare lost by its ball and by its line. */
export function readSpare({ before, record, verdict, openSearch, onTrueOil }: SpareThrown): SpareReading {
  const { decision, spot, standingBefore } = record
  const shared = {
    kind: 'spare',
    index: before.throws.length,
    spot,
    decision,
    standing: standingBefore,
    verdict,
  } as const
  if (verdict.givenAwayPins <= 0) return { ...shared, shares: null, stands: false }
  const { setup } = before
  const search = openSearch()
  const { best, tooCloseToCallPins } = verdict
  const own = setup.bowler.hand === 'left' ? mirrorMask(standingBefore) : standingBefore
  const stands =
    onTrueOil.ofChoice(best) - onTrueOil.ofChoice(decision) > tooCloseToCallPins &&
    doubtPhysics(
      setup,
      search.belief,
      spot.lane,
      lastFirstBall(before, spot.lane)?.decision ?? null,
      bentSpareWorth(setup, search.situations[0].pricing, own),
    ).stands(best, decision, tooCloseToCallPins)
  return { ...shared, shares: sharesOf(record, verdict, sparePrices(search, best)), stands }
}

/** Two parts: each one's share is the mean of what it saves when put right first and when put right last. */
function sharesOf({ decision }: ThrowRecord, { best, givenAwayPins }: Verdict, prices: SparePrices) {
  const savedBy = (parts: Parameters<typeof withParts>[2]): number =>
    Math.min(givenAwayPins, Math.max(0, givenAwayPins - prices.chargeOf(withParts(decision, best, parts))))
  const ball = (savedBy(['ball']) + givenAwayPins - savedBy(['target', 'slide', 'speed'])) / 2
  return { ball, line: givenAwayPins - ball }
}
