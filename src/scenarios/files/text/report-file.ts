import { lstat, open, realpath } from 'node:fs/promises'
import { WriteError } from './atomic-write.js'
import { replaceFile } from './replace-file.js'

/** A page is made to be handed on, so whoever may read its folder may read it. */
const SHARED = 0o644
const PAGE_BEGINS = '<!doctype html'

/**
 * Writes a page where it was asked for. An earlier page is replaced and its permissions stay; nothing else is ever written over: no
 * file that the page was made from, no record, no other text, no folder, link, pipe or device.
 *
 * @param sources what the page was made from
 * @throws WriteError
 */
export async function writePage(path: string, text: string, sources: readonly string[]): Promise<void> {
  await checkTarget(path, sources)
  await replaceFile(path, text, SHARED & ~process.umask())
}

/** The same check by itself, for before the work begins. @throws WriteError */
export async function checkTarget(path: string, sources: readonly string[]): Promise<void> {
  const found = await lstat(path).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return null
    throw new WriteError(path, fault)
  })
  if (!found) return
  if (!found.isFile())
    throw new WriteError(path, `this is ${kindOf(found)}, and a page is only written to a plain file`)
  const target = await realpath(path).catch(() => path)
  for (const source of sources) {
    if ((await realpath(source).catch(() => null)) === target) {
      throw new WriteError(path, 'the page would be made from it; name another file after --html')
    }
  }
  if (found.size > 0 && !(await isPage(path))) {
    throw new WriteError(path, 'something else than a page is in it; name another file after --html')
  }
}

interface Kinds {
  isDirectory(): boolean
  isSymbolicLink(): boolean
  isFIFO(): boolean
}

function kindOf(found: Kinds): string {
  if (found.isDirectory()) return 'a folder'
  if (found.isSymbolicLink()) return 'a link'
  return found.isFIFO() ? 'a pipe' : 'a device'
}

async function isPage(path: string): Promise<boolean> {
  try {
    const file = await open(path, 'r')
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(PAGE_BEGINS.length), 0, PAGE_BEGINS.length, 0)
      return buffer.subarray(0, bytesRead).toString('latin1').toLowerCase() === PAGE_BEGINS
    } finally {
      await file.close()
    }
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}
