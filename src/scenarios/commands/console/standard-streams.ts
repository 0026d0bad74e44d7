import { closeSync, fstatSync, writeSync } from 'node:fs'
import { isatty } from 'node:tty'
import { WriteError } from '../../files/text/atomic-write.js'
import { EXIT, SIGNAL_EXIT } from '../../files/text/exit-codes.js'

const INPUT = 0
const OUTPUT = 1
const ERRORS = 2

/** Why a stream can be used no more: its terminal has hung up, or nobody reads it any longer. */
export type LostStream = 'hang-up' | 'reader-gone'

/** What becomes of the program when a stream is lost while it works; true where it ends by itself soon. */
export type OnLost = (why: LostStream) => boolean

/**
 * Writes to standard output. A file or a device is written to the last byte at once, for the platform's stream counts a part that
 * still found room as the whole; a pipe or a terminal goes by that stream.
 *
 * @throws WriteError
 */
export function standardOutput(): (text: string) => void {
  if (goesByStream(OUTPUT)) return (text) => void process.stdout.write(text)
  return (text) => {
    const bytes = Buffer.from(text)
    try {
      for (let at = 0; at < bytes.length; ) at += writeSync(OUTPUT, bytes, at)
    } catch (cause) {
      throw new WriteError('standard output', cause)
    }
  }
}

function goesByStream(descriptor: number): boolean {
  if (isatty(descriptor)) return true
  try {
    const kind = fstatSync(descriptor)
    return !kind.isFile() && !kind.isCharacterDevice()
  } catch {
    return true
  }
}

/**
 * Takes faults of the standard streams, each of which would end the program with a trace otherwise. Nobody is left to tell of a
 * fault of standard error. A reader that has seen enough, such as `head`, is no fault of anyone's; a terminal that is gone counts
 * as the signal it sends.
 */
export function watchStandardStreams(onLost: OnLost): void {
  const lose = (why: LostStream, exitCode: number): void => {
    if (!onLost(why)) process.exit(exitCode)
  }
  process.stderr.on('error', () => {})
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
    if (code === 'EPIPE' || code === 'ERR_STREAM_DESTROYED') lose('reader-gone', EXIT.fine)
    else if (code === 'EIO') lose('hang-up', SIGNAL_EXIT.SIGHUP)
    else {
      process.stderr.write(`standard output: cannot be written (${code}).\n`)
      process.exit(EXIT.cannotWrite)
    }
  })
  letGoOfLostTerminals()
}

/** A terminal that is gone cannot be put back in order; the platform aborts when it tries to at the end, so it is closed before. */
function letGoOfLostTerminals(): void {
  const terminals = [INPUT, OUTPUT, ERRORS].filter((descriptor) => isatty(descriptor))
  process.on('exit', () => {
    for (const descriptor of terminals) {
      if (isatty(descriptor)) continue
      try {
        closeSync(descriptor)
      } catch {
        // Closed already.
      }
    }
  })
}
