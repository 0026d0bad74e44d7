import { chmod, mkdir, realpath, rename, stat, unlink } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { WriteError, writeSynced } from './atomic-write.js'
import { draftName, sweepOnce } from './drafts.js'
import { NODE_FILES } from './file-layer.js'

/** The program's own files are their owner's alone. */
const PRIVATE = 0o600

/**
 * Writes a file whole, in place of what was there: a reader finds the old text or the new one, never a part. Who may read it stays
 * as it was; a link stays a link to what is replaced.
 *
 * @param mode permissions of a file that was not there
 * @throws WriteError
 */
export async function replaceFile(path: string, text: string, mode = PRIVATE): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true })
    const target = await realpath(path).catch(() => path)
    const folder = dirname(target)
    await sweepOnce(folder)
    const draft = join(folder, draftName(target))
    const before = await modeOf(target)
    await writeSynced(draft, text, NODE_FILES, before ?? mode)
    try {
      // The mask of the process was taken off what the draft was opened with.
      if (before !== null) await chmod(draft, before)
      await rename(draft, target)
    } catch (fault) {
      await unlink(draft).catch(() => {})
      throw fault
    }
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}

async function modeOf(path: string): Promise<number | null> {
  try {
    return (await stat(path)).mode & 0o777
  } catch {
    return null
  }
}
