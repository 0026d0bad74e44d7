import { basename, dirname, join } from 'node:path'
import { draftName, sweepOnce, writerWords } from './drafts.js'
import { type FileLayer, NODE_FILES } from './file-layer.js'

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EFBIG: 'no file may grow so large here',
  EROFS: 'it can only be read here',
  EACCES: 'that is not permitted here',
  EPERM: 'that is not permitted here',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EIO: 'the disk failed',
  ENOTDIR: 'a file stands where a folder should be',
  EISDIR: 'a folder stands where a file should be',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'its name is too long here',
  ENOENT: 'it is gone',
}

function reasonOf(cause: unknown): { readonly words: string; readonly code: string } {
  const code = (cause as NodeJS.ErrnoException | null)?.code ?? ''
  const words = REASONS[code]
  if (words !== undefined) return { words, code: `, ${code}` }
  return { words: cause instanceof Error ? cause.message : String(cause), code: '' }
}

/** A file that could not be written, with the reason in one sentence. */
export class WriteError extends Error {
  /** Why, without the file: short enough for a line on the screen. */
  readonly reason: string

  constructor(path: string, cause: unknown) {
    const { words, code } = reasonOf(cause)
    super(cause instanceof WriteError ? cause.message : `${path}: cannot be written (${words}${code}).`)
    this.name = 'WriteError'
    this.reason = cause instanceof WriteError ? cause.reason : words
  }
}

export interface FreeName {
  readonly folder: string
  /** The file is called `stem-1.json`, `stem-2.json` and so on. */
  readonly stem: string
  readonly text: string
  /** Where it is written first; a hidden name of this process's own in the same folder if left out. */
  readonly draft?: string
  /** Told the name that is tried next, and awaited before it is taken. */
  readonly trying?: (name: string) => Promise<void>
}

/**
 * Writes a text under the first free name of a folder, which is made if need be. The file appears whole or not at all, nothing
 * already there is ever replaced, and both file and name are on the disk when this returns.
 *
 * @returns the path written.
 * @throws WriteError
 */
export async function writeUnderFreeName(
  { folder, stem, text, draft: named, trying }: FreeName,
  files: FileLayer = NODE_FILES,
): Promise<string> {
  const draft = named ?? join(folder, draftName(stem))
  try {
    await files.mkdir(folder, { recursive: true })
    await sweepOnce(folder, files)
    try {
      await writeSynced(draft, text, files)
      const taken = new Set(await files.readdir(folder))
      for (let number = 1; ; number++) {
        const name = `${stem}-${number}.json`
        if (taken.has(name)) continue
        await trying?.(name)
        const path = join(folder, name)
        if (!(await takeName(draft, path, files))) continue
        try {
          await syncFolder(folder, files)
        } catch (fault) {
          // Whoever is told that it failed will write it again: it must not be there twice.
          await files.unlink(path).catch(() => {})
          throw fault
        }
        return path
      }
    } finally {
      await files.unlink(draft).catch(() => {})
    }
  } catch (cause) {
    throw new WriteError(folder, cause)
  }
}

/** Writes a file and returns once it is on the disk. A file half written is taken away. */
export async function writeSynced(path: string, text: string, files: FileLayer, mode = 0o600): Promise<void> {
  const file = await files.open(path, 'w', mode)
  try {
    try {
      await file.writeFile(text)
      await file.sync()
    } finally {
      await file.close()
    }
  } catch (fault) {
    await files.unlink(path).catch(() => {})
    throw fault
  }
}

/** A new name is only safe once its folder is on the disk too; some file systems have no such thing as syncing one. */
export async function syncFolder(folder: string, files: FileLayer): Promise<void> {
  const handle = await files.open(folder, 'r')
  try {
    await handle.sync()
  } catch (fault) {
    if (!NO_FOLDER_SYNC.has((fault as NodeJS.ErrnoException).code ?? '')) throw fault
  } finally {
    await handle.close()
  }
}

const NO_FOLDER_SYNC: ReadonlySet<string> = new Set(['EINVAL', 'EISDIR', 'EBADF', 'ENOTSUP', 'EOPNOTSUPP'])
/** What a file system without hard links answers: exFAT, some network shares, some sandboxes. */
const NO_LINKS: ReadonlySet<string> = new Set([
  'EPERM',
  'ENOTSUP',
  'EOPNOTSUPP',
  'ENOSYS',
  'EINVAL',
  'EMLINK',
  'EACCES',
])

/** Gives a file a name that nothing has yet, and tells whether it got it; the draft may stay under its own name too. */
export async function takeName(draft: string, path: string, files: FileLayer): Promise<boolean> {
  try {
    await files.link(draft, path)
    return true
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code ?? ''
    if (code === 'EEXIST') return false
    if (!NO_LINKS.has(code)) throw cause
    return renameUnderClaim(draft, path, files)
  }
}

/**
 * The same without links. A renaming would replace what has the name, so the name is claimed first: by a file of its own that
 * only one can create, and then looked for. A claim that a dying program left keeps its name from being used, until it is swept.
 */
async function renameUnderClaim(draft: string, path: string, files: FileLayer): Promise<boolean> {
  const claim = join(dirname(path), `.${basename(path)}.claim`)
  try {
    const file = await files.open(claim, 'wx', 0o600)
    await file.writeFile(writerWords()).finally(() => file.close())
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'EEXIST') return false
    await files.unlink(claim).catch(() => {})
    throw cause
  }
  try {
    if (await isThere(path, files)) return false
    await files.rename(draft, path)
    return true
  } finally {
    await files.unlink(claim).catch(() => {})
  }
}

export async function isThere(path: string, files: FileLayer): Promise<boolean> {
  try {
    await files.lstat(path)
    return true
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return false
    throw fault
  }
}
