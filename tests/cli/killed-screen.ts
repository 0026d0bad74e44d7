import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import xterm from '@xterm/headless'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import type { Spot } from '../../src/sim/world/block/types.js'
import { readJournal } from '../scenarios/store/read-journal.js'
import { type KilledPlay, lookedOver } from './kill-moments.js'

const COLUMNS = 100
const ROWS = 30
const LONGEST_WAIT_MILLISECONDS = 120_000
const SETTINGS = { motion: 'off', mode: 'test', tour: 'seen' }

/** Where the screen says the block stands, as in its first line: what was thrown before is told. */
const STANDS = /(Practice \d+|Frame \d+, ball \d+)/

/** The trainer on a terminal of its own, a pseudo-terminal that util-linux's `script` opens, read through a terminal emulator. */
export function openScreen(program: readonly string[], argv: readonly string[], data: string) {
  const pidFile = join(data, 'pid')
  const words = [process.execPath, ...program, ...argv].map((word) => `'${word}'`).join(' ')
  const command = `echo $$ > '${pidFile}'; stty cols ${COLUMNS} rows ${ROWS}; exec ${words}`
  const environment = {
    ...process.env,
    DRYBOARD_CONFIG: join(data, 'config'),
    DRYBOARD_DATA: data,
    TERM: 'xterm-256color',
  }
  const child = spawn('script', ['-qfec', command, '/dev/null'], {
    env: environment,
    stdio: ['pipe', 'pipe', 'ignore'],
  })
  const terminal = new xterm.Terminal({ cols: COLUMNS, rows: ROWS, allowProposedApi: true })
  child.stdout.on('data', (bytes: Buffer) => terminal.write(bytes))
  child.stdin.on('error', () => {})
  const closed = new Promise<void>((resolve) => child.on('close', () => resolve()))
  const lineAt = (row: number): string => terminal.buffer.active.getLine(row)?.translateToString(true) ?? ''
  const firstLine = (): string => lineAt(0)
  return {
    stands: () => STANDS.exec(firstLine())?.[1] ?? '',
    shows: () => Array.from({ length: ROWS }, (_, row) => lineAt(row)).join('\n'),
    press: (keys: string) => void child.stdin.write(keys),
    kill: async () => {
      process.kill(Number(readFileSync(pidFile, 'utf8')), 'SIGKILL')
      await closed
      // What the program had written before it died is on the screen too.
      await new Promise<void>((resolve) => terminal.write('', resolve))
    },
  }
}

type Screen = ReturnType<typeof openScreen>

async function standsOtherThan(screen: Screen, before: string): Promise<string> {
  const until = performance.now() + LONGEST_WAIT_MILLISECONDS
  while (performance.now() < until) {
    const now = screen.stands()
    if (now !== '' && now !== before) return now
    await wait(5)
  }
  throw new Error(`The screen still says "${screen.stands()}" after ${LONGEST_WAIT_MILLISECONDS} ms.`)
}

/** Just after a result no Enter throws. */
const AFTER_RESULT_MILLISECONDS = 450

const spotStands = (spot: Spot | null): string =>
  spot === null ? '' : spot.phase === 'practice' ? `Practice ${spot.frame}` : `Frame ${spot.frame}, ball ${spot.ball}`

/**
 * Throws on the screen until so many results have been told, throws once more and kills the program outright so many milliseconds
 * after; then goes on with what is on the disk, first on the screen for one throw where `then` says so, then in plain play. For
 * `filing` it ends the block in place of the last throw, so that it dies while it files it.
 */
export async function killScreenAt(
  throws: number,
  milliseconds: number,
  program: readonly string[],
  then: 'plain play' | 'the screen' | 'filing',
): Promise<KilledPlay> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-screen-'))
  mkdirSync(join(data, 'config'))
  writeFileSync(join(data, 'config', 'settings.json'), JSON.stringify(SETTINGS))
  const screen = openScreen(program, ['play', 'house-forty', '--seed', `${throws}`], data)
  let stands = await standsOtherThan(screen, '')
  for (let thrown = 0; thrown < throws; thrown++) {
    screen.press('\r')
    stands = await standsOtherThan(screen, stands)
    await wait(AFTER_RESULT_MILLISECONDS)
  }
  if (then === 'filing') {
    // The block is ended and filed, and the program dies somewhere on the way.
    screen.press('e')
    await wait(150)
    screen.press('\r')
  } else screen.press('\r')
  await wait(milliseconds)
  await screen.kill()
  const told = then === 'filing' ? throws : await toldBefore(screen.stands(), data)
  if (then === 'the screen' && told > 0) await goOnScreen(program, data)
  return lookedOver(data, told)
}

/** Throws told when the screen stands where it says: those before that place in the journal's own block, played again. */
async function toldBefore(stands: string, data: string): Promise<number> {
  const path = journalIn(data)
  if (path === null) return stands === 'Practice throw 1' ? 0 : 1
  const { states } = replayRecord(await readJournal(path), path)
  const place = states.findIndex(({ spot }) => spotStands(spot) === stands)
  return place < 0 ? states.length : place
}

function journalIn(data: string): string | null {
  try {
    const name = readdirSync(join(data, 'unfinished')).find((one) => one.endsWith('.jsonl'))
    return name === undefined ? null : join(data, 'unfinished', name)
  } catch {
    return null
  }
}

/** Takes the block up on the screen, throws once, and kills it again once the result is told. */
async function goOnScreen(program: readonly string[], data: string): Promise<void> {
  const screen = openScreen(program, ['play', '--resume'], data)
  const stands = await standsOtherThan(screen, '')
  screen.press('\r')
  await standsOtherThan(screen, stands)
  await screen.kill()
}
