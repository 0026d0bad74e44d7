import { readFile } from 'node:fs/promises'

/** What a file holds; null where there is none. */
export async function textAt(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8')
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw fault
  }
}
