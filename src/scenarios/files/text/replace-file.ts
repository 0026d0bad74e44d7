import { mkdir, open, rename } from 'node:fs/promises'
import { dirname } from 'node:path'
import { WriteError } from './atomic-write.js'

/**
 * Writes a file whole, in place of what was there: a reader finds the old text or the new one, never a part.
 *
 * @throws WriteError
 */
export async function replaceFile(path: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true })
    const draft = `${path}.${process.pid}.part`
    const file = await open(draft, 'w', 0o600)
    try {
      await file.writeFile(text)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(draft, path)
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}
