import { createHash } from 'node:crypto'
import { GRADE_REVISION } from './grade-revision.js'
import { carryTableHash } from './hashes.js'
import { modelFingerprint } from './model-fingerprint.js'
import { type BlockRecord, recordText } from './record.js'
import { VERSION } from './version.js'

/**
 * What the kept debrief of a record is called: a digest of all it comes from, the record but for its player, the model, the carry
 * table, the grade and the program. Whatever of these changes, the old debrief is not found any more.
 */
export function debriefName(record: BlockRecord): string {
  const { player: _anybody, ...block } = record
  const made = [VERSION, GRADE_REVISION, modelFingerprint(), carryTableHash(), recordText(block)].join('\n')
  return createHash('sha256').update(made).digest('hex').slice(0, 32)
}
