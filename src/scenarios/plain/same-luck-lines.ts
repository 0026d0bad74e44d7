import { type Comparison, compareOnSameLuck, sameLuckScores } from '../../sim/analysis/explore/same-luck.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { SAME_LUCK_ABOUT, sameLuckLine } from '../words/same-luck-words.js'
import { wrapped } from '../words/wrapped.js'

/** What others score on a block's luck, worked out step by step. @param reached told how many percent are done */
export function workedComparison(begun: BlockState, reached: (percent: number) => void): Comparison {
  const steps = compareOnSameLuck(begun)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
    reached(Math.floor(100 * value.share))
  }
}

/** A block beside what others score on its luck. */
export function sameLuckLines(block: BlockState, comparison: Comparison): string[] {
  const scores = sameLuckScores(block, comparison)
  if (!scores) return ['No frame is finished, so there is nothing to compare.']
  return [sameLuckLine(scores, 'whole'), ...wrapped(SAME_LUCK_ABOUT)]
}
