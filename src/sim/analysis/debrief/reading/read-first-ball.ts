import type { BlockState, ThrowRecord } from '../../../world/block/types.js'
import { FULL_RACK } from '../../../world/pins/leaves.js'
import type { MomentPrices } from '../../grade/fair-grade.js'
import { isSame, type TrueOilPrices } from '../ledger/throw-worths.js'
import { bentFirstBallWorth } from './bent-worths.js'
import type { Innovation } from './innovation.js'
import { doubtPhysics } from './model-doubt.js'
import { partShares } from './part-shares.js'
import type { FirstBallReading, FirstBallShares, Staying, Verdict } from './reading.js'

/** What a throw before told about hand and lane, by its number in the block. */
type InnovationOf = (index: number) => Innovation | null

/** A first ball that counted, and what is worked out of it where it is needed. */
export interface FirstBallThrown {
  /** The block as it stood before. */
  readonly before: BlockState
  readonly record: ThrowRecord
  readonly verdict: Verdict
  readonly openPrices: () => MomentPrices
  readonly onTrueOil: TrueOilPrices
  readonly innovationOf: InnovationOf
}

/** Works out the counterfactuals of one first ball, from what had been seen before it. */
export function readFirstBall(thrown: FirstBallThrown): FirstBallReading {
  const { before, record, verdict, openPrices, onTrueOil, innovationOf } = thrown
  const { decision, spot } = record
  const shared = { kind: 'first-ball', index: before.throws.length, spot, decision, verdict } as const
  const lastIndex = before.throws.findLastIndex(
    (one) => one.spot.lane === spot.lane && one.standingBefore === FULL_RACK && one.decision.release === 'strike',
  )
  const last = lastIndex < 0 ? null : before.throws[lastIndex]
  const staying = (chargedPins: number): Staying | null =>
    last && {
      index: lastIndex,
      decision: last.decision,
      record: last,
      chargedPins,
      innovation: innovationOf(lastIndex),
    }
  if (verdict.givenAwayPins <= 0) return { ...shared, staying: staying(0), shares: null, stands: false }
  const prices = openPrices()
  const { best, tooCloseToCallPins } = verdict
  const stands =
    onTrueOil.ofChoice(best) - onTrueOil.ofChoice(decision) > tooCloseToCallPins &&
    doubtPhysics(
      before.setup,
      prices.search.belief,
      spot.lane,
      last?.decision ?? null,
      bentFirstBallWorth(before.setup, prices.search.bench.pricing),
    ).stands(best, decision, tooCloseToCallPins)
  return {
    ...shared,
    staying: staying(
      last && !isSame(last.decision, decision) ? prices.priceOf(last.decision).chargedPins : verdict.givenAwayPins,
    ),
    shares: sharesOf(record, prices, verdict),
    stands,
  }
}

/** What is a poorer lesson comes off the charge first; the rest divides among the parts of the choice. */
function sharesOf({ decision }: ThrowRecord, { priceOf }: MomentPrices, verdict: Verdict): FirstBallShares {
  const { best, givenAwayPins } = verdict
  const lesson = Math.min(givenAwayPins, Math.max(0, priceOf(decision).lessonPins))
  const { ball, slide, target, speed } = partShares(
    decision,
    best,
    givenAwayPins,
    (mixed) => priceOf(mixed).chargedPins,
  )
  const rest = (givenAwayPins - lesson) / givenAwayPins
  return { ball: ball * rest, slide: slide * rest, target: target * rest, speed: speed * rest, lesson }
}
