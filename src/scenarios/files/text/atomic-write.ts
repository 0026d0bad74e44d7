import { link, mkdir, open, unlink } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'

/** A file that could not be written, with the reason in one sentence. */
export class WriteError extends Error {
  constructor(path: string, cause: unknown) {
    super(`${path}: cannot be written (${cause instanceof Error ? cause.message : String(cause)}).`)
    this.name = 'WriteError'
  }
}

/**
 * Writes `text` under the first free name `stem-1.json`, `stem-2.json` ... of a folder, which is made if need be.
 * The file appears whole or not at all, and nothing already there is ever replaced.
 *
 * @returns the path written.
 * @throws WriteError
 */
export async function writeUnderFreeName(folder: string, stem: string, text: string): Promise<string> {
  try {
    const draft = await writeDraft(join(folder, stem), text)
    try {
      for (let number = 1; ; number++) {
        const path = join(folder, `${stem}-${number}.json`)
        if (await takeName(draft, path)) return path
      }
    } finally {
      await unlink(draft)
    }
  } catch (cause) {
    throw new WriteError(folder, cause)
  }
}

async function writeDraft(path: string, text: string): Promise<string> {
  const folder = dirname(path)
  const draft = join(folder, `.${basename(path)}.${process.pid}.part`)
  await mkdir(folder, { recursive: true })
  const file = await open(draft, 'w', 0o600)
  try {
    await file.writeFile(text)
    await file.sync()
  } finally {
    await file.close()
  }
  return draft
}

async function takeName(draft: string, path: string): Promise<boolean> {
  try {
    await link(draft, path)
    return true
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw cause
  }
}
