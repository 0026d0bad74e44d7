import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { leakIn } from './hostile-payloads.js'
import { runCommand } from './in-process.js'
import { spoiledArguments } from './spoiled-arguments.js'

const CODES = [0, 1, 64, 65, 66, 73]
/** Options that would have a command write where it is told. */
const WRITING = ['--html', '--data', '--note']

export interface ArgumentsAnswer {
  readonly argv: readonly string[]
  readonly exitCode: number
  readonly processorSeconds: number
  readonly complaint: string | null
}

/** Argument lists that write nothing but into the data folder. */
export const harmlessArguments = (count: number, seed: number): string[][] =>
  fc.sample(
    spoiledArguments.filter((argv) => !argv.some((one) => WRITING.some((option) => one.startsWith(option)))),
    { numRuns: count, seed },
  )

/** What each argument list is answered with, and what is wrong with that. */
export async function answersToArguments(count: number, seed: number): Promise<ArgumentsAnswer[]> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-arguments-'))
  const answers: ArgumentsAnswer[] = []
  for (const argv of harmlessArguments(count, seed)) {
    const begun = process.cpuUsage()
    const { exitCode, out, err } = await runCommand(argv, {
      typed: ['quit'],
      environment: { DRYBOARD_DATA: data, DRYBOARD_CONFIG: data },
    })
    const { user, system } = process.cpuUsage(begun)
    const processorSeconds = (user + system) / 1e6
    answers.push({
      argv,
      exitCode,
      processorSeconds,
      complaint: complaint(exitCode, `${out}\n${err}`, processorSeconds),
    })
  }
  rmSync(data, { recursive: true, force: true })
  return answers
}

function complaint(exitCode: number, said: string, processorSeconds: number): string | null {
  if (!CODES.includes(exitCode)) return `ends with ${exitCode}: ${said.slice(0, 300)}`
  if (/\n\s+at /.test(said)) return `shows a stack trace: ${said.slice(0, 300)}`
  if (exitCode !== 0 && said.trim() === '') return `ends with ${exitCode} without a word`
  const leak = leakIn(said)
  if (leak !== null) return `lets through ${leak}`
  return processorSeconds < 2 ? null : `takes ${processorSeconds} s`
}
