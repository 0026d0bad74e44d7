import { type CalledThrow, isRight, scoreCalls } from '../../../sim/analysis/debrief/calls.js'
import { rounded } from '../../files/text/json.js'

/** How often calls came right against how sure the player was; null where nothing was called. */
export function calibrationOf(calls: readonly CalledThrow[]) {
  const score = scoreCalls(calls)
  if (!score) return null
  const shares = [...new Set(calls.map(({ sureShare }) => sureShare))].sort((a, b) => a - b)
  return {
    count: score.count,
    right: score.right,
    claimed: rounded(score.claimed, 1),
    /** Mean squared distance of what was said from what came: 0 is perfect, 0.25 a coin toss. */
    brier: rounded(score.brier, 3),
    byConfidence: shares.map((sureShare) => {
      const such = calls.filter((call) => call.sureShare === sureShare)
      return { sureShare, count: such.length, right: such.filter(isRight).length }
    }),
  }
}
