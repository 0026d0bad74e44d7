import { basename } from 'node:path'
import { syncFolder, WriteError, writeSynced } from '../files/text/atomic-write.js'
import type { FileLayer } from '../files/text/file-layer.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { type BlockLock, holderOf, takeLock } from './block-lock.js'
import { draftPath, type JournalName, journalPath, lockPath, namedBy, saidPath } from './journal-names.js'
import { journalLine } from './journal-text.js'
import { fileStem } from './record.js'
import type { JournalHead, KeptDecision } from './record-schema.js'

/**
 * A block while it is played: a text file that only grows. Its first line is a JSON object that names the block and the program;
 * each later line is one decision with the pins it left, as in a record. A line counts once its line end is written.
 */
export interface Journal {
  readonly at: JournalName
  /** Returns when the line is on the disk and the file is still ours: only then may its result be shown. @throws WriteError */
  append(line: KeptDecision | { readonly filing: string }): Promise<void>
  /** Leaves the file for next time. */
  close(): Promise<void>
  /** Takes away the file and all that lies beside it. */
  remove(): Promise<void>
}

/** Somebody else has gone on with the block; what was not shown yet is theirs to decide. */
export class TakenOverError extends WriteError {
  constructor(at: JournalName) {
    super(journalPath(at), 'somebody else goes on with this block')
    this.name = 'TakenOverError'
  }
}

/**
 * Begins the journal of a block with the throws it has so far: it appears whole, under a name no other block has, or not at all.
 *
 * @throws WriteError
 */
export async function createJournal(
  folder: string,
  head: JournalHead,
  lines: readonly KeptDecision[],
  files: FileLayer,
): Promise<Journal> {
  try {
    await files.mkdir(folder, { recursive: true })
    const { at, lock } = await freeName(folder, fileStem(head), files)
    try {
      // What a block of this name said that is long gone is not said of this one.
      await files.unlink(saidPath(at)).catch(() => {})
      return await journalOn(at, lock, head, lines, files)
    } catch (fault) {
      await files.unlink(journalPath(at)).catch(() => {})
      await lock.release()
      throw fault
    }
  } catch (cause) {
    throw new WriteError(folder, cause)
  }
}

/**
 * Takes over a journal that nobody plays. Two cannot: a file is renamed by one only. Whoever played it until then finds it gone from
 * where it was before the next result is shown; and it is written anew, so that what they still write goes nowhere.
 *
 * @param read reads the journal once it is ours, and gives its first line and its decisions
 * @throws ScenarioError where somebody plays it, WriteError where it cannot be claimed
 */
export async function takeOverJournal(
  at: JournalName,
  read: (path: string) => Promise<{ readonly head: JournalHead; readonly lines: readonly KeptDecision[] }>,
  files: FileLayer,
): Promise<Journal> {
  const path = journalPath(at)
  try {
    const { lock, turn } = await nextTurn(at, files)
    const own = { ...at, turn }
    try {
      await files.rename(path, journalPath(own))
    } catch (fault) {
      await lock.release()
      if ((fault as NodeJS.ErrnoException).code === 'ENOENT') throw playedBySomebody(at)
      throw fault
    }
    await files.unlink(lockPath(at)).catch(() => {})
    await files.unlink(draftPath(at)).catch(() => {})
    try {
      const { head, lines } = await read(journalPath(own))
      return await journalOn(own, lock, head, lines, files)
    } catch (fault) {
      await lock.release()
      throw fault
    }
  } catch (cause) {
    if (cause instanceof ScenarioError) throw cause
    throw new WriteError(path, cause)
  }
}

const playedBySomebody = ({ name }: JournalName, host?: string): ScenarioError =>
  new ScenarioError([`${name}: somebody plays this block just now${host === undefined ? '' : `, on ${host}`}.`])

async function nextTurn(at: JournalName, files: FileLayer): Promise<{ lock: BlockLock; turn: number }> {
  const holder = await holderOf(lockPath(at), files)
  if (holder) throw playedBySomebody(at, holder.host)
  for (let turn = at.turn + 1; ; turn++) {
    const path = lockPath({ ...at, turn })
    const lock = await takeLock(path, files)
    if (lock) return { lock, turn }
    const taker = await holderOf(path, files)
    if (taker) throw playedBySomebody(at, taker.host)
  }
}

async function freeName(folder: string, stem: string, files: FileLayer): Promise<{ at: JournalName; lock: BlockLock }> {
  for (let number = 1; ; number++) {
    const at = { folder, name: `${stem}-${number}`, turn: 1 }
    if (await isNameTaken(at, files)) continue
    const lock = await takeLock(lockPath(at), files)
    if (!lock) continue
    // A block of this name may have been taken up, under a later turn, while the folder was read.
    if (!(await isNameTaken(at, files, basename(lockPath(at))))) return { at, lock }
    await lock.release()
  }
}

async function isNameTaken({ folder, name }: JournalName, files: FileLayer, but?: string): Promise<boolean> {
  const names = await files.readdir(folder)
  return names.some((one) => {
    const other = namedBy(one)
    return other?.name === name && one !== but
  })
}

type Handle = Awaited<ReturnType<FileLayer['open']>>

async function journalOn(
  at: JournalName,
  lock: BlockLock,
  head: JournalHead,
  lines: readonly KeptDecision[],
  files: FileLayer,
): Promise<Journal> {
  const path = journalPath(at)
  const text = [head, ...lines].map(journalLine).join('')
  await writeSynced(draftPath(at), text, files)
  await files.rename(draftPath(at), path)
  await syncFolder(at.folder, files)
  let file: Handle | null = await files.open(path, 'a')
  let wholeBytes = Buffer.byteLength(text)
  let isTorn = false
  const close = async (): Promise<void> => {
    await file?.close().catch(() => {})
    file = null
  }
  return {
    at,
    append: async (line) => {
      try {
        if (!file) throw new WriteError(path, 'it was closed')
        if (isTorn) await file.truncate(wholeBytes)
        isTorn = true
        const written = journalLine(line)
        await file.appendFile(written)
        await file.datasync()
        isTorn = !(await isStillThere(path, file, files))
        if (isTorn) throw new TakenOverError(at)
        wholeBytes += Buffer.byteLength(written)
      } catch (cause) {
        // What is there of the line goes at once, if it will: whoever reads the file now reads whole lines.
        if (file) await file.truncate(wholeBytes).catch(() => {})
        throw cause instanceof WriteError ? cause : new WriteError(path, cause)
      }
    },
    close: async () => {
      await close()
      await lock.release()
    },
    remove: async () => {
      await close()
      for (const one of [saidPath(at), path, draftPath(at)]) await unlinkIfThere(one, files)
      await lock.release()
    },
  }
}

/** Whether a path still leads to the file that is open: not where somebody has taken the block over. */
async function isStillThere(path: string, file: Handle, files: FileLayer): Promise<boolean> {
  const open = await file.stat()
  try {
    const named = await files.stat(path)
    return named.ino === open.ino && named.dev === open.dev
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return false
    throw fault
  }
}

export async function unlinkIfThere(path: string, files: FileLayer): Promise<void> {
  try {
    await files.unlink(path)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'ENOENT') throw fault
  }
}
