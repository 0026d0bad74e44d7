import { createInterface, type Interface } from 'node:readline'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { visibleLine } from '../../files/text/visible-text.js'
import type { CommandConsole, StopSignal } from './console.js'
import { type LostStream, standardOutput } from './standard-streams.js'

const STOP_SIGNALS: readonly StopSignal[] = ['SIGHUP', 'SIGINT', 'SIGTERM']

export interface SystemConsole extends CommandConsole {
  /** Ends the lines of a block whose terminal or reader is gone, so that what stands can be kept; false where no lines are read. */
  readonly lost: (why: LostStream) => boolean
}

let only: SystemConsole | undefined

/** The process's own streams, of which there is one set. */
export function systemConsole(): SystemConsole {
  only ??= openConsole()
  return only
}

function openConsole(): SystemConsole {
  const write = standardOutput()
  let stopped: StopSignal | null = null
  let endLines: (() => void) | null = null
  return {
    print: (line) => write(`${visibleLine(line)}\n`),
    tell: (line) => void process.stderr.write(`${visibleLine(line)}\n`),
    hint: (line) => {
      if (process.stderr.isTTY === true) process.stderr.write(`\r\u001b[K${visibleLine(line)}`)
    },
    watched: process.stderr.isTTY === true,
    lines: () => {
      const reader = createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })
      let fault: NodeJS.ErrnoException | null = null
      const end = (): void => {
        reader.close()
        process.stdin.destroy()
      }
      endLines = end
      process.stdin.on('error', (cause: NodeJS.ErrnoException) => {
        if (cause.code === 'EIO') stopped ??= 'SIGHUP'
        else fault ??= cause
        end()
      })
      // The first signal only ends the lines, so that what stands can be kept; a second one ends the program at once.
      for (const signal of STOP_SIGNALS) {
        process.once(signal, () => {
          stopped = signal
          end()
        })
      }
      return closedAfter(reader, () => fault)
    },
    stoppedBy: () => stopped,
    lost: (why) => {
      if (!endLines) return false
      if (why === 'hang-up') stopped ??= 'SIGHUP'
      endLines()
      return true
    },
    interactive: process.stdin.isTTY === true && process.stdout.isTTY === true,
    environment: process.env,
  }
}

/** The lines of a reader that is closed once nobody wants more of them; left open it would keep the program from ending. */
async function* closedAfter(reader: Interface, faultOf: () => NodeJS.ErrnoException | null): AsyncGenerator<string> {
  try {
    yield* reader
  } finally {
    reader.close()
  }
  const fault = faultOf()
  if (fault) throw new ScenarioError([`standard input: cannot be read (${fault.code ?? fault.message}).`], true)
}
