import type { RandomSource } from '../../random.js'
import { drawAnew } from './draw-anew.js'
import { effectiveSize, type HypothesisSet } from './hypotheses.js'
import { moveHypotheses, type PastThrow } from './move-hypotheses.js'
import type { PatternRanges } from './pattern-ranges.js'

/** A set that is worth fewer than this share of its hypotheses is renewed. */
const LEAST_EFFECTIVE_SHARE = 1 / 2

/**
 * Keeps a set alive once few hypotheses carry most of the weight: it is drawn anew by weight, and then moved apart.
 * Without the moves everything that the throws say nothing about would be settled by which few happened to survive.
 */
export function renew(
  set: HypothesisSet,
  ranges: PatternRanges,
  mirrored: boolean,
  past: readonly PastThrow[],
  random: RandomSource,
): void {
  if (effectiveSize(set.weights) >= LEAST_EFFECTIVE_SHARE * set.size) return
  drawAnew(set, random)
  moveHypotheses(set, ranges, mirrored, past, random)
}
