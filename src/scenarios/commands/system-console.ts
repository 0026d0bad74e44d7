import { createInterface } from 'node:readline'
import type { CommandConsole } from './console.js'

/** The process's own streams. */
export function systemConsole(): CommandConsole {
  return {
    print: (text) => void process.stdout.write(`${text}\n`),
    tell: (text) => void process.stderr.write(`${text}\n`),
    lines: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
    interactive: process.stdin.isTTY === true && process.stdout.isTTY === true,
    environment: process.env,
  }
}
