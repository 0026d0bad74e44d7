import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { replaceFile } from '../../files/text/replace-file.js'
import { GRADE_REVISION } from '../../store/grade-revision.js'
import { carryTableHash } from '../../store/hashes.js'
import { modelFingerprint } from '../../store/model-fingerprint.js'
import { sealedText, unsealed } from '../../store/sealed-text.js'
import { VERSION } from '../../store/version.js'
import type { OpenedPack } from '../pack/pack.js'
import { type CheckedEntry, type CheckWanted, checkEntry } from './check-entry.js'

const FORMAT = 'dryboard-contest-check'
const FORMAT_VERSION = 1

/**
 * Checks an entry, or takes what was found of the very same file before by the same program, so that standings told again (as a table,
 * as a page) cost nothing.
 *
 * @param folder where what was worked out is kept
 */
export async function checkOnce(
  path: string,
  opened: OpenedPack,
  wanted: CheckWanted,
  folder: string | null,
): Promise<CheckedEntry> {
  if (folder === null) return checkEntry(path, opened, wanted)
  const at = join(folder, `${await nameOf(path, opened, wanted)}.entry.json`)
  const text = await readFile(at, 'utf8').catch(() => null)
  const kept = text === null ? null : unsealed(FORMAT, FORMAT_VERSION, text)
  if (kept !== null) return { ...(JSON.parse(kept) as CheckedEntry), file: path }
  const entry = await checkEntry(path, opened, wanted)
  // What cannot be kept is worked out again next time.
  if (entry.status !== 'refused')
    await replaceFile(at, sealedText(FORMAT, FORMAT_VERSION, JSON.stringify(entry))).catch(() => {})
  return entry
}

/** Names all that a check comes from; a refusal quotes the file's name, and so is never kept. */
async function nameOf(path: string, { digest }: OpenedPack, { luck, accounts }: CheckWanted): Promise<string> {
  const bytes = await readFile(path).catch(() => Buffer.from(basename(path)))
  const made = [VERSION, GRADE_REVISION, modelFingerprint(), carryTableHash(), digest, luck, accounts !== null].join(
    '\n',
  )
  return createHash('sha256').update(made).update('\n').update(bytes).digest('hex').slice(0, 32)
}
