#!/usr/bin/env node
import { CommanderError } from 'commander'
import { buildProgram } from './scenarios/commands/argv/program.js'
import type { ScreenOptions } from './scenarios/commands/argv/program-parts.js'
import { faultReport } from './scenarios/commands/console/fault-report.js'
import { watchStandardStreams } from './scenarios/commands/console/standard-streams.js'
import { systemConsole } from './scenarios/commands/console/system-console.js'
import { EXIT, SIGNAL_EXIT } from './scenarios/files/text/exit-codes.js'
import { withDataFolder } from './scenarios/store/data-folder.js'
import { nameIfReadable } from './scenarios/store/player-name.js'

const console = systemConsole()

/** The last word on a fault that nobody took: a sentence and a code, never a trace. */
function endOn(fault: unknown): void {
  const { sentences, exitCode } = faultReport(fault)
  sentences.forEach(console.tell)
  process.exit(exitCode)
}

/** Opens the screen; kept behind an import of its own so that no command pays for it. */
async function openScreen(asked: ScreenOptions): Promise<number> {
  const player = await nameIfReadable(asked.player, withDataFolder(process.env, asked.dataFolder), console.tell)
  const options = { ...asked, ...(player === undefined ? {} : { player }) }
  const { openTrainer } = await import('./tui/app/open.js')
  // The screen takes its own faults, for it has a terminal to give back before anything can be said.
  process.off('uncaughtException', endOn)
  return openTrainer({
    ...options,
    playAloud: async () => (await import('./scenarios/commands/play-aloud.js')).playAloud(options),
  })
}

async function main(argv: readonly string[]): Promise<number> {
  let exitCode: number = EXIT.fine
  const finish = (code: number): void => {
    exitCode = code
  }
  const program = buildProgram({ console, openScreen, finish })
  try {
    await program.parseAsync(argv.length > 0 ? argv : ['home'], { from: 'user' })
    return exitCode
  } catch (fault) {
    if (fault instanceof CommanderError) return fault.exitCode === 0 ? EXIT.fine : EXIT.usage
    const report = faultReport(fault)
    report.sentences.forEach(console.tell)
    return report.exitCode
  }
}

watchStandardStreams(console.lost)
process.on('uncaughtException', endOn)
const ended = await main(process.argv.slice(2))
process.exitCode = ended
// Ending by itself would give back a terminal that is gone, which some versions of Node take for a fault of their own.
if (ended === SIGNAL_EXIT.SIGHUP) {
  process.removeAllListeners('SIGHUP')
  process.kill(process.pid, 'SIGHUP')
}
