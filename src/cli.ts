#!/usr/bin/env node
import { CommanderError } from 'commander'
import { buildProgram } from './scenarios/commands/argv/program.js'
import type { ScreenOptions } from './scenarios/commands/argv/program-parts.js'
import { faultReport } from './scenarios/commands/console/fault-report.js'
import { systemConsole } from './scenarios/commands/console/system-console.js'
import { EXIT, SIGNAL_EXIT } from './scenarios/files/text/exit-codes.js'
import { nameIfReadable, PLAYER_VARIABLE } from './scenarios/store/player-name.js'

const console = systemConsole()

/** Opens the screen; kept behind an import of its own so that no command pays for it. */
async function openScreen({ dataFolder, player: named, ...options }: ScreenOptions): Promise<number> {
  const player = await nameIfReadable(named, process.env, console.tell)
  if (player !== undefined) process.env[PLAYER_VARIABLE] = player
  if (dataFolder !== undefined) process.env.DRYBOARD_DATA = dataFolder
  const { openTrainer } = await import('./tui/app/open.js')
  return openTrainer(options)
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
    for (const sentence of report.sentences) console.tell(sentence)
    return report.exitCode
  }
}

/** Results that cannot be put out: the program goes on keeping what is to be kept, and ends with this. */
let unprinted: number | null = null
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  // A reader that has seen enough, such as `head`, closes the pipe; that is no fault of anyone's.
  if (fault.code === 'EPIPE') process.exit(EXIT.fine)
  // A terminal that is gone: the hang-up's own signal says what to end with.
  if (fault.code === 'EIO' || unprinted !== null) return
  unprinted = EXIT.cannotWrite
  console.tell(`Standard output cannot be written (${fault.code ?? fault.message}).`)
})
// Nobody listens to messages any more; what a command came to still counts.
process.stderr.on('error', () => {})
// A terminal that is gone can no longer be read; the lines end, and the hang-up's signal comes.
process.stdin.on('error', () => {})

const ended = await main(process.argv.slice(2))
process.exitCode = ended === EXIT.fine ? (unprinted ?? ended) : ended
// Ending by itself would give back a terminal that is gone, which some versions of Node take for a fault of their own.
if (ended === SIGNAL_EXIT.SIGHUP) {
  process.removeAllListeners('SIGHUP')
  process.kill(process.pid, 'SIGHUP')
}
