import { randomBytes } from 'node:crypto'
import type { FileLayer } from '../files/text/file-layer.js'
import { isGone, ownIdentity, type ProcessIdentity } from '../files/text/process-identity.js'

/**
 * A lock is a file that only one can create. It names host, boot, process namespace, process and the moment the process began, so
 * that from the same machine a dead holder is told from a living one at once and for certain; from anywhere else the holder is
 * alive as long as the file's time is kept fresh.
 */
export interface BlockLock {
  release(): Promise<void>
}

const FORMAT = 'dryboard-lock'
const BEAT_MILLISECONDS = 10_000
/** Six beats missed. Clocks of hosts that share a folder must agree to within this. */
const STALE_MILLISECONDS = 60_000

/** Takes a lock; null where somebody has created it before. */
export async function takeLock(path: string, files: FileLayer): Promise<BlockLock | null> {
  let file: Awaited<ReturnType<FileLayer['open']>>
  try {
    file = await files.open(path, 'wx', 0o600)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'EEXIST') return null
    throw fault
  }
  try {
    const token = randomBytes(6).toString('hex')
    await file.writeFile(`${JSON.stringify({ format: FORMAT, version: 1, token, ...ownIdentity() })}\n`)
  } catch (fault) {
    await file.close().catch(() => {})
    await files.unlink(path).catch(() => {})
    throw fault
  }
  await file.close()
  const beat = setInterval(() => {
    const now = new Date()
    files.utimes(path, now, now).catch(() => {})
  }, BEAT_MILLISECONDS)
  beat.unref()
  return {
    release: async () => {
      clearInterval(beat)
      await files.unlink(path).catch(() => {})
    },
  }
}

/** Who holds a lock; null where nobody does: there is none, or its holder is dead. */
export async function holderOf(path: string, files: FileLayer): Promise<{ readonly host: string } | null> {
  const found = await lockAt(path, files)
  return typeof found === 'string' ? null : found
}

/** The same, with the two ways of being held by nobody told apart: only a dead lock may be taken away. */
export async function lockAt(path: string, files: FileLayer): Promise<{ readonly host: string } | 'absent' | 'dead'> {
  let text: string
  let when: number
  try {
    text = await files.readFile(path, 'utf8')
    when = (await files.stat(path)).mtimeMs
  } catch {
    return 'absent'
  }
  const holder = identityIn(text)
  const gone = holder ? isGone(holder) : null
  if (gone ?? Date.now() - when > STALE_MILLISECONDS) return 'dead'
  return { host: holder?.host ?? 'an unknown machine' }
}

/** Null for a lock whose holder has not come to write its name, or never will. */
function identityIn(text: string): ProcessIdentity | null {
  try {
    const { format, host, machine, pid, started } = JSON.parse(text) as Record<string, unknown>
    if (format !== FORMAT || typeof host !== 'string' || typeof machine !== 'string') return null
    if (typeof pid !== 'number' || !Number.isSafeInteger(pid) || pid < 1) return null
    return { host: host.slice(0, 80), machine, pid, started: typeof started === 'number' ? started : null }
  } catch {
    return null
  }
}
