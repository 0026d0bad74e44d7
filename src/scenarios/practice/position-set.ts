import { builtInScenario } from '../library/library.js'
import { loadScenario } from '../library/load.js'
import { GRADE_REVISION } from '../store/grade-revision.js'
import { scenarioHash } from '../store/hashes.js'
import { modelFingerprint } from '../store/model-fingerprint.js'
import { type PositionSet, positionsFromText } from './positions-text.js'

let kept: PositionSet | undefined

/** The positions that come with the program. */
export async function readyPositions(): Promise<PositionSet> {
  kept ??= positionsFromText((await import('./positions-data.js')).POSITIONS_TEXT)
  return kept
}

/**
 * How positions stand to the program that opens them. Of an earlier model their lanes are others, so that each is asked anew; of earlier grades
 * alone lanes and throws are the same to the bit, and what answers cost is said to be priced by those.
 */
export type Standing = 'today' | 'earlier-grades' | 'earlier-model'

export async function standingOfSet({
  model,
  grades,
  scenarios,
}: Omit<PositionSet, 'positions' | 'perGame'>): Promise<Standing> {
  if (model !== modelFingerprint()) return 'earlier-model'
  for (const [name, hash] of Object.entries(scenarios)) {
    const isSame = builtInScenario(name) !== undefined && scenarioHash((await loadScenario(name)).data) === hash
    if (!isSame) return 'earlier-model'
  }
  return grades === GRADE_REVISION ? 'today' : 'earlier-grades'
}
