import { startingState } from '../../src/tui/state/starting-state.js'
import { commandLeaks } from '../cli/hostile-commands.js'
import { PAYLOADS } from '../cli/hostile-payloads.js'
import { fixtureServices } from '../tui/fixtures.js'
import { screenLeaks } from '../tui/hostile-screens.js'

/** Slow commands get one payload in so many. */
const SLOW_EVERY = 50

/**
 * Gives every text that drives, forges or hides on a terminal to every command (as file and folder name, field, field name, player,
 * seed, option and typed line) and to every screen, and counts what reaches the terminal; it should be nothing. Commands that take
 * seconds (debrief, review, room, bag, auto, scenario check) get every fiftieth. Argument: how many payloads.
 *
 * The last run, of all 205 texts: none reached the terminal, from no command and no screen (fourteen minutes).
 */
export async function run([most]: readonly string[] = []): Promise<void> {
  const payloads = PAYLOADS.slice(0, most === undefined ? PAYLOADS.length : Number(most))
  const home = await startingState(undefined, fixtureServices())
  const sums = { payloads: 0, commandLeaks: 0, screenLeaks: 0 }
  for (const [index, payload] of payloads.entries()) {
    const commands = await commandLeaks(payload, index % SLOW_EVERY === 0)
    const screens = await screenLeaks(home, payload, 2)
    sums.payloads++
    sums.commandLeaks += commands.length
    sums.screenLeaks += screens.length
    for (const leak of [...commands, ...screens]) process.stdout.write(`${JSON.stringify(payload)}: ${leak}\n`)
    if ((index + 1) % 25 === 0 || index + 1 === payloads.length) process.stdout.write(`${JSON.stringify(sums)}\n`)
  }
}
