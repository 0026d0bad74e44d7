import { createHash } from 'node:crypto'
import { ScenarioError } from '../files/text/scenario-error.js'
import { canonicalText } from './hashes.js'

/** Over every field of a record but the digest itself, in whatever order they were written. */
export function recordDigest(record: object): string {
  const { digest: _digest, ...rest } = record as { readonly digest?: unknown }
  return createHash('sha256').update(canonicalText(rest)).digest('hex').slice(0, 32)
}

/**
 * Checks that a record is as it was filed. It is held against what is written, not against what the schema makes of it.
 *
 * @throws ScenarioError
 */
export function checkRecordDigest(path: string, written: unknown): void {
  const record = written as { readonly digest?: unknown }
  if (recordDigest(record) === record.digest) return
  throw new ScenarioError([`${path}: the record is not as it was filed; the file was changed since.`])
}
