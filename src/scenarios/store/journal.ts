import { type FileHandle, mkdir, open, readdir, rename, rm, stat, unlink } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { BlockState, ThrowRecord } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { WriteError } from '../files/text/atomic-write.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { journalFromText } from './read-journal.js'
import { type BlockRecord, blockNames, fileStem, keptDecision } from './record.js'
import { JOURNAL_FORMAT, JOURNAL_VERSION, type JournalHead } from './record-schema.js'

/**
 * A block while it is played: a text file that only grows. Its first line is a JSON object that names format, version, program,
 * model, carry table, scenario and seed; each later line is one decision with the pins it left, as in a record. A line counts
 * once its line end is written; what a dying program left of a last line is ignored, and cut off before the file grows again.
 * The file is called `STEM.PID.jsonl`: whoever plays it has its process number in the name.
 */
export interface Journal {
  readonly path: string
  /** Returns when the decision is on the disk: only then may its result be shown. @throws WriteError */
  append(thrown: ThrowRecord): Promise<void>
  /** Leaves the file for next time. */
  close(): Promise<void>
  /** Takes the file away and what lies beside it, its block being kept as a record. */
  remove(): Promise<void>
}

/** Where the journals of a data folder lie. */
export function journalsFolder(data: string): string {
  return join(data, 'unfinished')
}

/** Where what the player said of a block lies while it is played: beside its journal, under a name that no player's number is in. */
export function saidBeside(journalPath: string): string {
  return join(dirname(journalPath), `${stemOf(journalPath)}.said.json`)
}

/**
 * Begins the journal of a block with the throws it has so far; where one of them cannot be written no journal is left.
 *
 * @param player who plays it, if that was said
 * @throws WriteError
 */
export async function openJournal(
  folder: string,
  scenario: Scenario,
  block: BlockState,
  player?: string,
): Promise<Journal> {
  const journal = await openEmpty(folder, {
    format: JOURNAL_FORMAT,
    version: JOURNAL_VERSION,
    ...blockNames(scenario, block.seed, player),
  })
  try {
    for (const thrown of block.throws) await journal.append(thrown)
    return journal
  } catch (fault) {
    await journal.remove().catch(() => {})
    throw fault
  }
}

async function openEmpty(folder: string, head: JournalHead): Promise<Journal> {
  try {
    await mkdir(folder, { recursive: true })
    const { path, file } = await createFree(folder, fileStem(head))
    await writeLine(file, head)
    await syncFolder(folder)
    return journalOn(path, file)
  } catch (cause) {
    throw new WriteError(folder, cause)
  }
}

/**
 * Takes a journal up again: claims it for this process and makes it ready to grow.
 *
 * @throws ScenarioError when it cannot be read, WriteError when it cannot be claimed
 */
export async function takeUpJournal(path: string): Promise<Journal> {
  const { wholeBytes } = journalFromText(path, await readTextFile(path))
  const own = join(dirname(path), `${stemOf(path)}.${process.pid}.jsonl`)
  try {
    await rename(path, own)
    const file = await open(own, 'r+')
    await file.truncate(wholeBytes)
    await file.close()
    return journalOn(own, await open(own, 'a'))
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}

/** Journals that no running program plays, the latest written first. */
export async function leftJournals(folder: string): Promise<string[]> {
  let names: string[]
  try {
    names = await readdir(folder)
  } catch {
    return []
  }
  const left = names.filter((name) => /\.\d+\.jsonl$/.test(name) && !isRunning(Number(name.split('.').at(-2)))).sort()
  const files = await Promise.all(left.map((name) => writtenAt(join(folder, name))))
  return files
    .filter((file) => file !== null)
    .sort((a, b) => b.when - a.when)
    .map(({ path }) => path)
}

/** When a journal was last written to; null where somebody has taken it up meanwhile. */
async function writtenAt(path: string): Promise<{ path: string; when: number } | null> {
  try {
    return { path, when: (await stat(path)).mtimeMs }
  } catch {
    return null
  }
}

/** What a journal holds. @throws ScenarioError */
export async function readJournal(path: string): Promise<BlockRecord> {
  return journalFromText(path, await readTextFile(path)).record
}

function journalOn(path: string, file: FileHandle): Journal {
  return {
    path,
    append: async (thrown) => {
      try {
        await writeLine(file, keptDecision(thrown))
      } catch (cause) {
        throw new WriteError(path, cause)
      }
    },
    close: () => file.close(),
    remove: async () => {
      await file.close()
      await unlink(path)
      await rm(saidBeside(path), { force: true })
    },
  }
}

async function writeLine(file: FileHandle, line: unknown): Promise<void> {
  await file.appendFile(`${JSON.stringify(line)}\n`)
  await file.datasync()
}

/** A number is free when nobody plays or has left a journal under it: whoever takes one up keeps its number. */
async function createFree(folder: string, stem: string): Promise<{ path: string; file: FileHandle }> {
  const taken = new Set((await readdir(folder)).filter((name) => name.endsWith('.jsonl')).map(stemOf))
  for (let number = 1; ; number++) {
    if (taken.has(`${stem}-${number}`)) continue
    const path = join(folder, `${stem}-${number}.${process.pid}.jsonl`)
    try {
      return { path, file: await open(path, 'ax', 0o600) }
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== 'EEXIST') throw cause
    }
  }
}

/** A new name is only safe once its folder is on the disk too. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

const stemOf = (path: string): string => basename(path).replace(/\.\d+\.jsonl$/, '')

function isRunning(pid: number): boolean {
  if (pid === process.pid) return true
  try {
    process.kill(pid, 0)
    return true
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM'
  }
}
