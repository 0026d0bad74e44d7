import { constants } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { ScenarioError } from './scenario-error.js'

const LARGEST_FILE_BYTES = 4_000_000
/** A pipe without a writer would never open else. */
const AT_ONCE = constants.O_RDONLY | constants.O_NONBLOCK

/**
 * A whole text file, without the mark some editors put first. Kind and size are looked at before anything is read: a device or a
 * pipe may have no end.
 *
 * @param otherwise what else could have been named, to be told where there is no such file
 * @throws ScenarioError
 */
export async function readTextFile(path: string, otherwise = ''): Promise<string> {
  let file: FileHandle | undefined
  try {
    file = await open(path, AT_ONCE)
    return await textOf(file, path)
  } catch (cause) {
    if (cause instanceof ScenarioError) throw cause
    throw new ScenarioError([`${path}: ${unreadable(cause as NodeJS.ErrnoException, otherwise)}.`], true)
  } finally {
    await file?.close()
  }
}

async function textOf(file: FileHandle, path: string): Promise<string> {
  const kind = await file.stat()
  if (kind.isDirectory()) throw new ScenarioError([`${path}: this is a folder, not a file.`], true)
  if (!kind.isFile()) throw new ScenarioError([`${path}: this is a device or a pipe, not a file.`], true)
  refuseLonger(path, kind.size)
  // The file may grow while it is read, or be of a file system that tells no size.
  const bytes = Buffer.alloc(LARGEST_FILE_BYTES + 1)
  let length = 0
  for (let read = -1; read !== 0; length += read) {
    read = (await file.read(bytes, length, bytes.length - length)).bytesRead
  }
  refuseLonger(path, length)
  return bytes.toString('utf8', 0, length).replace(/^\uFEFF/, '')
}

function refuseLonger(path: string, bytes: number): void {
  if (bytes <= LARGEST_FILE_BYTES) return
  throw new ScenarioError([`${path}: found more than ${LARGEST_FILE_BYTES} bytes; allowed is at most as many.`])
}

function unreadable({ code, message }: NodeJS.ErrnoException, otherwise: string): string {
  if (code === 'ENOENT') return `there is no such file${otherwise}`
  return code === 'EISDIR' ? 'this is a folder, not a file' : `cannot be read (${code ?? message})`
}
