import type { BlockState, Decision, ThrowRecord } from '../../../world/block/types.js'
import { mirrorMask } from '../../../world/pins/leaves.js'
import { type FairSpareSearch, meanByTable } from '../../grade/fair-spare.js'
import { lastFirstBall } from '../../shots/least-move.js'
import { ballIndexOf } from '../../shots/shots.js'
import { worthOnTrueOil } from '../ledger/throw-worths.js'
import { bentSpareWorth } from './bent-worths.js'
import { doubtPhysics } from './model-doubt.js'
import { withParts } from './part-shares.js'
import type { SpareReading, Verdict } from './reading.js'

/** What a throw at a spare lost by its ball and by its line. */
export function readSpare(
  before: BlockState,
  record: ThrowRecord,
  openSearch: () => FairSpareSearch,
  verdict: Verdict,
): SpareReading {
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
  const { situations, belief } = openSearch()
  const meanWorth = ({ ballId, aim, release }: Decision): number =>
    meanByTable(situations, { ballIndex: ballIndexOf(setup.bag, ballId), aim, release })
  const { best } = verdict
  const neither = meanWorth(decision)
  const both = meanWorth(best)
  const ballAlone = meanWorth(withParts(decision, best, ['ball']))
  const lineAlone = meanWorth(withParts(decision, best, ['target', 'feet', 'speed']))
  // two parts: each one's share is the mean of putting it right first and putting it right last
  const ball = (ballAlone - neither + both - lineAlone) / 2
  const line = (lineAlone - neither + both - ballAlone) / 2
  const own = setup.bowler.hand === 'left' ? mirrorMask(standingBefore) : standingBefore
  const onTrueOil = worthOnTrueOil(before, record)
  const stands =
    onTrueOil(best) - onTrueOil(decision) > verdict.tooCloseToCallPins &&
    both - neither > verdict.tooCloseToCallPins &&
    doubtPhysics(
      setup,
      belief,
      spot.lane,
      lastFirstBall(before, spot.lane)?.decision ?? null,
      bentSpareWorth(setup, own),
    ).stands(best, decision, verdict.tooCloseToCallPins)
  return { ...shared, shares: { ball, line }, stands }
}
