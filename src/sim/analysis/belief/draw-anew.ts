import type { RandomSource } from '../../random.js'
import { copyHypothesis, type HypothesisSet, pickSystematically } from './hypotheses.js'

/** Draws as many hypotheses by weight, equally weighted; a survivor stays in its place. */
export function drawAnew(set: HypothesisSet, random: RandomSource): void {
  const times = new Uint32Array(set.size)
  for (const parent of pickSystematically(set.weights, set.size, random())) times[parent]++
  let free = 0
  for (let parent = 0; parent < set.size; parent++)
    for (let copy = 1; copy < times[parent]; copy++) {
      while (times[free] > 0) free++
      copyHypothesis(set, parent, set, free)
      free++
    }
  set.weights.fill(1 / set.size)
}
