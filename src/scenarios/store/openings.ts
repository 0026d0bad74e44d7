import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { WriteError } from '../files/text/atomic-write.js'
import type { FileLayer } from '../files/text/file-layer.js'

/** Enough to tell blocks apart, and it tells nobody what was played. */
const NAME_DIGITS = 16

const openingsPath = (data: string): string => join(data, 'opened.txt')

const nameOf = (scenarioHash: string, seed: string): string =>
  createHash('sha256').update(`${scenarioHash}\n${seed}`).digest('hex').slice(0, NAME_DIGITS)

/**
 * Notes that a block of a scenario and seed begins, and tells how many did before: a file with a line for each, to which lines are
 * only added, so that programs side by side miss none.
 *
 * @throws WriteError
 */
export async function noteOpening(
  data: string,
  { scenarioHash, seed }: { readonly scenarioHash: string; readonly seed: string },
  files: FileLayer,
): Promise<number> {
  const path = openingsPath(data)
  const name = nameOf(scenarioHash, seed)
  try {
    await files.mkdir(data, { recursive: true })
    const before = await openedBefore(path, name, files)
    const file = await files.open(path, 'a', 0o600)
    try {
      await file.appendFile(`${name}\n`)
    } finally {
      await file.close()
    }
    return before
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}

async function openedBefore(path: string, name: string, files: FileLayer): Promise<number> {
  try {
    return (await files.readFile(path, 'utf8')).split('\n').filter((line) => line === name).length
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return 0
    throw fault
  }
}
