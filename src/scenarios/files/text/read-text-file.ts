import { readFile } from 'node:fs/promises'
import { ScenarioError } from './scenario-error.js'

const LARGEST_FILE_BYTES = 4_000_000

/**
 * A whole text file, without the mark some editors put first.
 *
 * @param otherwise what else could have been named, to be told where there is no such file
 * @throws ScenarioError
 */
export async function readTextFile(path: string, otherwise = ''): Promise<string> {
  let bytes: Buffer
  try {
    bytes = await readFile(path)
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code
    const sentence =
      code === 'ENOENT'
        ? `there is no such file${otherwise}`
        : code === 'EISDIR'
          ? 'this is a folder, not a file'
          : `cannot be read (${code ?? String(cause)})`
    throw new ScenarioError([`${path}: ${sentence}.`], true)
  }
  if (bytes.length > LARGEST_FILE_BYTES) {
    throw new ScenarioError([`${path}: found ${bytes.length} bytes; allowed is at most ${LARGEST_FILE_BYTES}.`])
  }
  return bytes.toString('utf8').replace(/^\uFEFF/, '')
}
