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

/** Whether positions were made with today's model, grades and scenarios: only then do their prices and lanes hold. */
export async function isOfToday({
  model,
  grades,
  scenarios,
}: Omit<PositionSet, 'positions' | 'perGame'>): Promise<boolean> {
  if (grades !== GRADE_REVISION || model !== modelFingerprint()) return false
  for (const [name, hash] of Object.entries(scenarios)) {
    if (builtInScenario(name) === undefined || scenarioHash((await loadScenario(name)).data) !== hash) return false
  }
  return true
}
