import { link, unlink } from 'node:fs/promises'

/**
 * Puts a file that cannot be read out of the way of a new one, under the first free name NAME.unreadable-1, -2 and so on.
 *
 * @returns the path it lies under now
 */
export async function setAside(path: string): Promise<string> {
  for (let number = 1; ; number++) {
    const aside = `${path}.unreadable-${number}`
    try {
      // A link is refused where the name is taken; a renaming would replace what has it.
      await link(path, aside)
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code === 'EEXIST') continue
      throw fault
    }
    await unlink(path)
    return aside
  }
}
