import { randomBytes } from 'node:crypto'
import { setTimeout as wait } from 'node:timers/promises'
import { WriteError } from '../files/text/atomic-write.js'
import { type FileLayer, NODE_FILES } from '../files/text/file-layer.js'
import { holderOf, lockAt, takeLock } from './block-lock.js'

const LONGEST_WAIT_MILLISECONDS = 20_000
const LONGEST_NAP_MILLISECONDS = 40

/**
 * Does a piece of work that no other program does at the same time, as told by a lock file; waits its turn.
 *
 * @throws WriteError where its turn does not come, and whatever the work throws
 */
export async function alone<Result>(
  lock: string,
  work: () => Promise<Result>,
  files: FileLayer = NODE_FILES,
): Promise<Result> {
  const until = performance.now() + LONGEST_WAIT_MILLISECONDS
  for (;;) {
    const held = await takeLock(lock, files).catch((cause: unknown) => {
      throw new WriteError(lock, cause)
    })
    if (held) {
      try {
        return await work()
      } finally {
        await held.release()
      }
    }
    if ((await lockAt(lock, files)) === 'dead') await clearDead(lock, files)
    else if (performance.now() > until) throw new WriteError(lock, 'another program has been writing for too long')
    await wait(Math.random() * LONGEST_NAP_MILLISECONDS)
  }
}

/** A dead holder's lock is moved aside and looked at once more: had somebody taken it meanwhile, it is put back. */
async function clearDead(lock: string, files: FileLayer): Promise<void> {
  const aside = `${lock}.${randomBytes(4).toString('hex')}`
  try {
    await files.rename(lock, aside)
    if (await holderOf(aside, files)) await files.link(aside, lock).catch(() => {})
    await files.unlink(aside)
  } catch {
    // Somebody else has cleared it away.
  }
}
