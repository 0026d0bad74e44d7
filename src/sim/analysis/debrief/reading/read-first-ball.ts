import type { BlockState, Decision, ThrowRecord } from '../../../world/block/types.js'
import { FULL_RACK } from '../../../world/pins/leaves.js'
import { isSame, worthOnTrueOil } from '../ledger/throw-worths.js'
import { bentFirstBallWorth } from './bent-worths.js'
import type { FirstBallJudge, Gap } from './first-ball-judge.js'
import type { Innovation } from './innovation.js'
import { doubtPhysics } from './model-doubt.js'
import { nearestAsGood } from './nearest-line.js'
import { partShares } from './part-shares.js'
import type { FirstBallReading, Instead, Staying, Verdict } from './reading.js'

/** What a throw before told about hand and lane, by its number in the block. */
export type InnovationOf = (index: number) => Innovation | null

/** Works out the counterfactuals of one first ball, by what could be known before it. */
export function readFirstBall(
  before: BlockState,
  record: ThrowRecord,
  openJudge: () => FirstBallJudge,
  verdict: Verdict,
  innovationOf: InnovationOf,
): FirstBallReading {
  const { decision, spot } = record
  const shared = { kind: 'first-ball', index: before.throws.length, spot, decision, verdict } as const
  const lastIndex = lastFirstBallIndex(before, spot.lane)
  if (verdict.givenAwayPins <= 0) {
    const staying = lastIndex < 0 ? null : untroubled(before, lastIndex, innovationOf)
    return { ...shared, ...NOTHING_LOST, staying }
  }
  const judge = openJudge()
  const tolerance = verdict.tooCloseToCallPins
  const last = lastIndex < 0 ? null : before.throws[lastIndex].decision
  const onTrueOil = worthOnTrueOil(before, record)
  const ownOnTrueOil = onTrueOil(decision)
  const doubt = doubtPhysics(before.setup, judge.search.belief, spot.lane, last, bentFirstBallWorth(before.setup))
  const stands: Stands = (other) => doubt.stands(other, decision, tolerance)
  const savedBy: SavedBy = (other) => {
    const { pins, standardErrorPins } = judge.gap(other, decision)
    return { pins: Math.min(pins, onTrueOil(other) - ownOnTrueOil), standardErrorPins }
  }
  const better = (other: Decision): Instead => {
    const saved = savedBy(other)
    return { decision: other, saved, stands: saved.pins > tolerance && stands(other) }
  }
  const nearest = better(nearestAsGood(judge, decision, verdict.best, tolerance))
  const bestSameBall = bestOfBall(judge, decision.ballId)
  const sameBall = bestSameBall && nearestAsGood(judge, decision, bestSameBall, tolerance, decision.ballId)
  return {
    ...shared,
    staying:
      lastIndex < 0 ? null : stayingOf(before, lastIndex, decision, judge, verdict, innovationOf, savedBy, stands),
    nearest,
    nearestSameBall:
      sameBall === null || isSame(sameBall, decision)
        ? null
        : isSame(sameBall, nearest.decision)
          ? nearest
          : better(sameBall),
    ballLostPins: bestSameBall ? Math.max(0, judge.gap(verdict.best, bestSameBall).pins) : verdict.lostPins,
    shares: partShares(decision, nearest.decision, judge.meanWorth),
    lessonLostPins:
      verdict.teachingPins === null
        ? 0
        : Math.max(0, verdict.lostPins - Math.max(0, judge.gap(verdict.best, decision).pins)),
  }
}

const NOTHING_LOST = { nearest: null, nearestSameBall: null, ballLostPins: 0, shares: null, lessonLostPins: 0 } as const

function lastFirstBallIndex({ throws }: BlockState, lane: number): number {
  return throws.findLastIndex(
    (one) => one.spot.lane === lane && one.standingBefore === FULL_RACK && one.decision.release === 'strike',
  )
}

/** The line before, where nothing was given away and so nothing is asked of it. */
function untroubled(before: BlockState, lastIndex: number, innovationOf: InnovationOf): Staying {
  const record = before.throws[lastIndex]
  return {
    decision: record.decision,
    record,
    lostPins: 0,
    saved: { pins: 0, standardErrorPins: 0 },
    stands: false,
    innovation: innovationOf(lastIndex),
  }
}

/** Whether a choice that looks better than the one made goes on doing so. */
type Stands = (other: Decision) => boolean

/** What another choice would have saved: by what could be known, but no more than on the oil as it was. */
type SavedBy = (other: Decision) => Gap

function stayingOf(
  before: BlockState,
  lastIndex: number,
  decision: Decision,
  judge: FirstBallJudge,
  { best, tooCloseToCallPins }: Verdict,
  innovationOf: InnovationOf,
  savedBy: SavedBy,
  stands: Stands,
): Staying {
  const record = before.throws[lastIndex]
  const last = record.decision
  const stayed = isSame(last, decision)
  const saved = stayed ? { pins: 0, standardErrorPins: 0 } : savedBy(last)
  return {
    decision: last,
    record,
    lostPins: Math.max(0, judge.gap(best, last).pins),
    saved,
    stands: saved.pins > tooCloseToCallPins && stands(last),
    innovation: innovationOf(lastIndex),
  }
}

/** The best line of a ball by the search's last round; null where the ball was out of the race by then. */
function bestOfBall(judge: FirstBallJudge, ballId: string): Decision | null {
  const line = judge.search.finalists.find(({ ballIndex }) => judge.setup.bag[ballIndex].id === ballId)
  return line ? judge.decisionOf(line) : null
}
