import { unlink } from 'node:fs/promises'
import { takeName } from './atomic-write.js'
import { NODE_FILES } from './file-layer.js'

/**
 * Puts a file that cannot be read out of the way of a new one, under the first free name NAME.unreadable-1, -2 and so on.
 *
 * @returns the path it lies under now
 */
export async function setAside(path: string): Promise<string> {
  for (let number = 1; ; number++) {
    const aside = `${path}.unreadable-${number}`
    if (!(await takeName(path, aside, NODE_FILES))) continue
    await unlink(path).catch(() => {})
    return aside
  }
}
