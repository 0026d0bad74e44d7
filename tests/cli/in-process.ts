import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { CommanderError } from 'commander'
import { buildProgram } from '../../src/scenarios/commands/argv/program.js'
import type { CommandConsole } from '../../src/scenarios/commands/console/console.js'
import { faultReport } from '../../src/scenarios/commands/console/fault-report.js'
import { visibleLine } from '../../src/scenarios/files/text/visible-text.js'

/** Where nothing is set, whoever runs the tests. */
const NO_FOLDER = join(tmpdir(), `dryboard-nothing-set-${process.pid}`)
const NO_DATA = join(tmpdir(), `dryboard-nothing-kept-${process.pid}`)

export interface CommandResult {
  readonly exitCode: number
  readonly out: string
  readonly err: string
}

/** Runs a command line in this process, with typed lines and an environment of the test's own. */
export async function runCommand(
  argv: readonly string[],
  { typed = [], environment = {} }: { typed?: readonly string[]; environment?: Record<string, string> } = {},
): Promise<CommandResult> {
  const out: string[] = []
  const err: string[] = []
  const console: CommandConsole = {
    print: (text) => void out.push(visibleLine(text)),
    tell: (text) => void err.push(visibleLine(text)),
    hint: () => {},
    watched: true,
    lines: async function* () {
      yield* typed
    },
    stoppedBy: () => null,
    interactive: false,
    environment: { DRYBOARD_CONFIG: NO_FOLDER, DRYBOARD_DATA: NO_DATA, ...environment },
  }
  let exitCode = 0
  const openScreen = async (): Promise<number> => {
    throw new Error('No screen was to be opened.')
  }
  const finish = (code: number): void => {
    exitCode = code
  }
  const program = buildProgram({ console, openScreen, finish })
  try {
    await program.parseAsync(argv, { from: 'user' })
  } catch (fault) {
    if (fault instanceof CommanderError) exitCode = fault.exitCode === 0 ? 0 : 64
    else {
      const report = faultReport(fault)
      err.push(...report.sentences.map(visibleLine))
      exitCode = report.exitCode
    }
  }
  return { exitCode, out: out.join('\n'), err: err.join('\n') }
}
