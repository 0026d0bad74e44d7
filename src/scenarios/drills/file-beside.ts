import { realpath } from 'node:fs/promises'
import { dirname, join, relative } from 'node:path'

/** Of files that a drill may name: scenario files. */
const ENDING = /\.(ya?ml|json)$/i

/**
 * The scenario file that a drill names, beside it or in a folder beside it; null where there is none of that name. A drill comes
 * from elsewhere, so it names no file that does not lie with it, not by `..`, nor by a link.
 *
 * @returns the path, or in words why the file may not be named
 */
export async function fileBeside(
  drillPath: string,
  named: string,
): Promise<{ path: string } | { refusal: string } | null> {
  const folder = dirname(drillPath)
  const path = join(folder, named)
  const refusal = 'a drill names scenario files (.yaml, .yml or .json) that lie in its own folder'
  if (isOutside(relative(folder, path)) || named.startsWith('/')) return { refusal }
  let there: string
  try {
    there = relative(await realpath(folder), await realpath(path))
  } catch {
    return null
  }
  return isOutside(there) || !ENDING.test(there) ? { refusal } : { path }
}

const isOutside = (way: string): boolean => way === '' || way === '..' || way.startsWith('../') || way.startsWith('/')
