import { createInterface, type Interface } from 'node:readline'
import type { CommandConsole, StopSignal } from './console.js'

const STOP_SIGNALS: readonly StopSignal[] = ['SIGHUP', 'SIGINT', 'SIGTERM']

/** The process's own streams. */
export function systemConsole(): CommandConsole {
  let stopped: StopSignal | null = null
  return {
    print: (text) => void process.stdout.write(`${text}\n`),
    tell: (text) => void process.stderr.write(`${text}\n`),
    hint: (text) => {
      if (process.stderr.isTTY === true) process.stderr.write(`\r\u001b[K${text}`)
    },
    lines: () => {
      const reader = createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })
      // A terminal that hangs up fails to be read before its signal comes, or without one.
      process.stdin.once('error', () => {
        stopped ??= 'SIGHUP'
        reader.close()
      })
      // The first signal only ends the lines, so that what stands can be kept; a second one ends the program at once.
      for (const signal of STOP_SIGNALS) {
        process.once(signal, () => {
          stopped = signal
          reader.close()
          process.stdin.destroy()
        })
      }
      return closedAfter(reader)
    },
    stoppedBy: () => stopped,
    interactive: process.stdin.isTTY === true && process.stdout.isTTY === true,
    environment: process.env,
  }
}

/** The lines of a reader that is closed once nobody wants more of them; left open it would keep the program from ending. */
async function* closedAfter(reader: Interface): AsyncGenerator<string> {
  try {
    yield* reader
  } finally {
    reader.close()
  }
}
