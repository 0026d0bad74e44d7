import { join } from 'node:path'
import { replaceFile } from '../files/text/replace-file.js'
import { textAt } from '../files/text/text-at.js'
import type { ContestSection } from './contest-section.js'
import { freshKey, isSignedBy, keyFromText, keyText, type SigningKey, signatureOf } from './signing.js'

/** Where what a machine knows of contests lies. */
export const contestsFolder = (data: string): string => join(data, 'contests')

const keyPath = (data: string, entry: string): string => join(contestsFolder(data), `${entry}.key`)

/** An entry's own key, made where there is none yet and kept for its owner alone. @throws WriteError */
export async function entryKey(data: string, entry: string): Promise<SigningKey> {
  const kept = await keptKey(data, entry)
  if (kept) return kept
  const key = freshKey()
  await replaceFile(keyPath(data, entry), keyText(key))
  return key
}

async function keptKey(data: string, entry: string): Promise<SigningKey | null> {
  const text = await textAt(keyPath(data, entry)).catch(() => null)
  return text === null ? null : keyFromText(text)
}

type WithContest = { readonly contest?: ContestSection | undefined }

/** All of a record that its entry's signature is over. */
function signedPart(record: WithContest): object {
  const { digest: _digest, ...rest } = record as WithContest & { readonly digest?: unknown }
  const { signature: _signature, ...contest } = rest.contest ?? ({} as Partial<ContestSection>)
  return { ...rest, contest }
}

/** The record with its entry's signature; without one where the key is not here, and as it was where it is no entry. */
export async function withEntrySignature<Record extends WithContest>(record: Record, data: string): Promise<Record> {
  const { contest } = record
  if (contest === undefined) return record
  const key = await keptKey(data, contest.entry)
  return key && key.publicText === contest.key ? signedEntry(record, key) : record
}

/** The record signed by a key. */
export function signedEntry<Record extends WithContest>(record: Record, key: SigningKey): Record {
  const { contest } = record
  if (contest === undefined) return record
  return { ...record, contest: { ...contest, signature: signatureOf(signedPart(record), key) } }
}

/** Whether an entry is as its own key signed it. */
export function isEntrySigned(record: WithContest): boolean {
  const { contest } = record
  return contest?.signature !== undefined && isSignedBy(signedPart(record), contest.signature, contest.key)
}
