import { join } from 'node:path'
import { sweepOnce } from '../files/text/drafts.js'
import type { FileLayer } from '../files/text/file-layer.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { holderOf, lockAt } from './block-lock.js'
import { unlinkIfThere } from './journal-file.js'
import { draftPath, type JournalName, journalPath, lockPath, namedBy, saidPath } from './journal-names.js'
import { journalFromText } from './journal-text.js'
import { fileSaid, type KeptIn, textAt } from './open-block.js'
import { type BlockRecord, readRecord } from './record.js'

/** A block that nobody plays and that is not filed, told without playing it again. */
export interface LeftBlock {
  readonly at: JournalName
  readonly journalPath: string
  /** What it is asked for by. */
  readonly name: string
  /** The record it would be as it was left. */
  readonly record: BlockRecord
}

interface RefusedBlock {
  readonly name: string
  readonly fault: ScenarioError
}

export interface LeftBlocks {
  /** The latest first. */
  readonly blocks: readonly LeftBlock[]
  /** Those that cannot be read, the latest first; they are left as they are. */
  readonly refused: readonly RefusedBlock[]
  /** Names of those that somebody plays just now. */
  readonly played: readonly string[]
}

type Folders = Pick<KeptIn, 'journals' | 'records' | 'saidWith'>

/** What lies unfinished. What dying programs left beside it, and blocks that were filed but for the last stroke, are cleared away. */
export async function findLeft(folders: Folders, files: FileLayer): Promise<LeftBlocks> {
  const names = await namesIn(folders.journals, files)
  const journals: { readonly at: JournalName; readonly when: number }[] = []
  const played: string[] = []
  for (const one of names.flatMap((name) => namedBy(join(folders.journals, name)) ?? [])) {
    if (one.ending !== 'jsonl') continue
    if (await holderOf(lockPath(one), files)) played.push(one.name)
    else {
      const when = await writtenAt(journalPath(one), files)
      if (when !== null) journals.push({ at: one, when })
    }
  }
  await clearLeftovers(folders.journals, names, files)
  const blocks: LeftBlock[] = []
  const refused: RefusedBlock[] = []
  for (const { at } of journals.sort((a, b) => b.when - a.when || (a.at.name < b.at.name ? -1 : 1))) {
    const path = journalPath(at)
    try {
      const { record, filing } = journalFromText(path, await readTextFile(path))
      if (filing !== null && (await isFiled(join(folders.records, filing), record)))
        await clearFiled(at, folders.saidWith(join(folders.records, filing)), files)
      else blocks.push({ at, journalPath: path, name: at.name, record })
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
      // Taken up or filed by somebody while it was looked at.
      if ((await writtenAt(path, files)) !== null) refused.push({ name: at.name, fault })
    }
  }
  return { blocks, refused, played }
}

/** Whether the record a block was about to become is there: then only its journal was still to go. */
async function isFiled(path: string, { block, decisions }: BlockRecord): Promise<boolean> {
  try {
    const filed = await readRecord(path)
    return block !== null && filed.block === block && filed.decisions.length >= decisions.length
  } catch {
    return false
  }
}

async function clearFiled(at: JournalName, saidWith: string, files: FileLayer): Promise<void> {
  try {
    const said = await textAt(saidPath(at), files)
    if (said !== null) await fileSaid(said, saidWith, files)
  } catch {
    return
  }
  for (const path of [saidPath(at), draftPath(at), journalPath(at), lockPath(at)]) {
    await unlinkIfThere(path, files).catch(() => {})
  }
}

/** Locks and drafts whose holder is dead; those beside a journal are only in the way of its name. */
async function clearLeftovers(folder: string, names: readonly string[], files: FileLayer): Promise<void> {
  await sweepOnce(folder, files)
  for (const one of names.flatMap((name) => namedBy(join(folder, name)) ?? [])) {
    if (one.ending === 'jsonl') continue
    const lock = await lockAt(lockPath(one), files)
    if (lock === 'dead') await files.unlink(lockPath(one)).catch(() => {})
    if (one.ending === 'part' && typeof lock === 'string') await files.unlink(draftPath(one)).catch(() => {})
  }
}

async function namesIn(folder: string, files: FileLayer): Promise<string[]> {
  try {
    return (await files.readdir(folder)).sort()
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code
    if (code === 'ENOENT') return []
    throw new ScenarioError([`${folder}: this folder cannot be read (${code ?? String(fault)}).`], true)
  }
}

async function writtenAt(path: string, files: FileLayer): Promise<number | null> {
  try {
    return (await files.stat(path)).mtimeMs
  } catch {
    return null
  }
}
