import { createHash } from 'node:crypto'
import { GRADE_REVISION } from './grade-revision.js'
import { canonicalText, carryTableHash } from './hashes.js'
import { modelFingerprint } from './model-fingerprint.js'
import { type BlockRecord, ownThrows } from './record.js'
import { VERSION } from './version.js'

/**
 * What the kept debrief of a record is called: a digest of all it comes from: scenario, seed, decisions and whether they are
 * the player's own, the model, the carry table, the grade and the program. Who played, and when, changes nothing in it. Whatever of these changes, the old debrief is not found any more.
 */
export function debriefName(record: BlockRecord): string {
  const { scenarioHash, name, scenario, seed, decisions } = record
  const own = ownThrows(record)
  const thrown = decisions.map(({ by: _by, ...decision }, index) => ({ ...decision, counted: own[index] }))
  const block = canonicalText({ scenarioHash, name, scenario, seed, thrown })
  const made = [VERSION, GRADE_REVISION, record.model, modelFingerprint(), carryTableHash(), block].join('\n')
  return createHash('sha256').update(made).digest('hex').slice(0, 32)
}
