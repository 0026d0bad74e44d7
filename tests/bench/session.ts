import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import xterm from '@xterm/headless'
import seedrandom from 'seedrandom'
import { type BenchRow, figuresOf } from './measure.js'
import { CURIOUS, HURRIED, sessionPlayer } from './session-player.js'
import { slopeOf } from './slope.js'

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const PROBE = fileURLToPath(new URL('session-probe.mjs', import.meta.url))
const MINUTE = 60_000
/** How long somebody thinks at least and at most, between keys, and for a screen that has nothing to press. */
const PLAYER = {
  manner: CURIOUS,
  settings: {},
  thinking: [5000, 8000],
  key: 250,
  waiting: 1000,
  arguments: [],
} as const
/** As fast as the program takes it: six hours of a player in well under one. */
const SCRIPT = {
  manner: HURRIED,
  // No throw waits for its grade; grades are worked out behind play all the same.
  settings: { mode: 'test' },
  thinking: [90, 130],
  key: 10,
  waiting: 60,
  arguments: ['play', 'house-forty', '--no-motion'],
} as const
const MINUTES_A_SAMPLE = 2
/** Milliseconds without a change after which a picture stands, and how long that is waited for. */
const STILL = 40
const MOST_WAITED = 2000
const SAMPLES_AT_SPEED = 40
/** Code is still being compiled and caches filled in the first minutes; slopes leave them out. */
const WARM_UP_MINUTES = 6
const MEGABYTE = 1 << 20
const MOVES_A_COUNT = 20
/** A terminal's Escape is known for one only once nothing has followed it for a while. */
const ESCAPE = '\u001B'
const ESCAPE_MILLISECONDS = 300
/** So long without a throw on the disk is no play. */
const STUCK_MINUTES = 3
/** Stands on every screen of the program. */
const KEYS = /\? keys|\b(Enter|Esc) /

interface Sample {
  readonly minute: number
  readonly throws: number
  readonly heapUsed: number
  /** Of the thread that thinks; null before there is one. */
  readonly thinker: number | null
  readonly external: number
  readonly rss: number
  readonly processorSeconds: number
  readonly timers: number
}

/** Some minutes at a player's pace; or at speed until so many throws are made, and no longer than the minutes. */
export interface SessionLength {
  readonly minutes: number
  readonly throws?: number
}

/**
 * Memory of the built program while somebody plays it for `minutes` at a player's pace: a copy of it in a terminal of its own,
 * a player who reads that terminal's screen, and every two minutes what is left after all garbage is collected. With `throws` the
 * same by a script at speed, sampled forty times over.
 */
export async function benchSession(length: SessionLength): Promise<BenchRow[]> {
  if (!existsSync(join(ROOT, 'dist', 'cli.js'))) throw new Error('There is no dist/cli.js; run npm run build first.')
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-session-'))
  try {
    cpSync(join(ROOT, 'dist'), join(folder, 'dist'), { recursive: true })
    const { samples, moves, throws } = await play(folder, length)
    const isWarm = ({ minute, throws: thrown }: Sample) =>
      length.throws === undefined
        ? minute >= Math.min(WARM_UP_MINUTES, length.minutes / 5)
        : thrown >= Math.min(length.throws, throws) / 5
    const kept = samples.filter(isWarm)
    const over = length.throws === undefined ? HOURS : THOUSANDS
    return [
      { name: 'moves of the player', unit: '', measured: figuresOf([moves]) },
      { name: 'throws', unit: '', measured: figuresOf([throws]) },
      ...memoryRows('heap of the screen', kept, over, ({ heapUsed }) => heapUsed),
      ...memoryRows('heap of the thinker', kept, over, ({ thinker }) => thinker ?? Number.NaN),
      ...memoryRows('resident set', kept, over, ({ rss }) => rss),
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** What memory is held against. */
const HOURS = { of: ({ minute }: Sample) => minute / 60, words: 'an hour' }
const THOUSANDS = { of: ({ throws }: Sample) => throws / 1000, words: 'a thousand throws' }

function memoryRows(
  name: string,
  samples: readonly Sample[],
  over: typeof HOURS,
  bytesOf: (sample: Sample) => number,
): BenchRow[] {
  const points = samples.map((sample) => [over.of(sample), bytesOf(sample) / MEGABYTE] as const)
  const known = points.filter(([, megabytes]) => Number.isFinite(megabytes))
  if (known.length === 0) return []
  const level: BenchRow = { name, unit: 'MB', measured: figuresOf(known.map(([, megabytes]) => megabytes)) }
  if (known.length < 4) return [level]
  const { slope, halfWidth } = slopeOf(known)
  const said = `${name}, growth ${over.words} (95 %: ${sign(slope - halfWidth)} to ${sign(slope + halfWidth)})`
  return [level, { name: said, unit: 'MB', measured: figuresOf([slope]) }]
}

/** Throws that are on the disk, in blocks filed and left. */
function keptThrows(folder: string): number {
  const throwsIn = (name: string): number => {
    const path = join(folder, 'data', name)
    if (!existsSync(path)) return 0
    const files = readdirSync(path).filter((file) => !file.startsWith('.'))
    return files.reduce((sum, file) => sum + readFileSync(join(path, file), 'utf8').split('"standing"').length - 1, 0)
  }
  return throwsIn('records') + throwsIn('unfinished')
}

const sign = (value: number): string => (value < 0 ? `−${(-value).toFixed(1)}` : `+${value.toFixed(1)}`)

async function play(folder: string, { minutes, throws: most = Number.POSITIVE_INFINITY }: SessionLength) {
  const pace = Number.isFinite(most) ? SCRIPT : PLAYER
  const log = join(folder, 'probe.jsonl')
  mkdirSync(join(folder, 'config'))
  writeFileSync(join(folder, 'config', 'settings.json'), JSON.stringify(pace.settings))
  const { child, screen } = open(folder, log, pace.arguments)
  const ended = new Promise<number | null>((done) => child.on('close', done))
  let isOver = false
  let lastScreen = ''
  let exitCode: number | null = null
  let lastMove: unknown = null
  ended.then((code) => {
    isOver = true
    exitCode = code
  })
  const player = sessionPlayer('session', pace.manner)
  const chance = seedrandom.alea('pace')
  const start = performance.now()
  const minute = () => (performance.now() - start) / MINUTE
  let moves = 0
  let throws = 0
  const between = Number.isFinite(most) ? most / SAMPLES_AT_SPEED : MINUTES_A_SAMPLE
  const reached = () => (Number.isFinite(most) ? throws : minute())
  let nextSample = between
  let countedAt = 0
  const samples: Sample[] = []
  await wait(2000)
  while (minute() < minutes && throws < most && !isOver) {
    const shown = await screen()
    if (isOver) break
    if (!KEYS.test(shown)) {
      // Not begun yet, or left already: nobody would press anything.
      await wait(pace.waiting)
      continue
    }
    const move = player(shown)
    if (move.length > 0) [lastScreen, lastMove] = [shown, move]
    if (move.length > 0) moves++
    if (moves % MOVES_A_COUNT === 0 || minute() - countedAt > STUCK_MINUTES) {
      const kept = keptThrows(folder)
      if (kept > throws) countedAt = minute()
      else if (minute() - countedAt > STUCK_MINUTES) throw new Error(`Nothing was thrown any more at\n${shown}`)
      throws = kept
    }
    for (const key of move) {
      child.stdin!.write(key)
      await wait(pace.key)
    }
    if (move.at(-1) === ESCAPE) await wait(ESCAPE_MILLISECONDS)
    const [least, longest] = pace.thinking
    await wait(move.length === 0 ? pace.waiting : least + chance() * (longest - least))
    if (reached() < nextSample && minute() < minutes && throws < most) continue
    samples.push(await sampleOf(log, samples.length, minute(), throws))
    nextSample += between
    process.stderr.write(`${told(samples.at(-1)!)}, ${throws} throws\n`)
  }
  if (isOver)
    throw new Error(
      `The program ended with ${exitCode} after ${minute().toFixed(1)} minutes and ${JSON.stringify(lastMove)} at\n${lastScreen}\nand then\n${await screen()}`,
    )
  child.stdin!.write('\u001B')
  await wait(500)
  child.stdin!.write('q')
  await Promise.race([ended, wait(5000)])
  child.kill()
  return { samples, moves, throws }
}

function open(
  folder: string,
  log: string,
  argv: readonly string[],
): { child: ChildProcess; screen: () => Promise<string> } {
  const program = [process.execPath, '--expose-gc', '--import', PROBE, join(folder, 'dist', 'cli.js'), ...argv]
  const command = `stty rows 24 cols 80; exec ${program.map((part) => `'${part}'`).join(' ')}`
  const child = spawn('script', ['-qec', command, '/dev/null'], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: {
      ...process.env,
      NODE_OPTIONS: '',
      TERM: 'xterm-256color',
      COLORTERM: 'truecolor',
      DRYBOARD_DATA: join(folder, 'data'),
      DRYBOARD_CONFIG: join(folder, 'config'),
      SESSION_PROBE: log,
    },
  })
  const emulator = new xterm.Terminal({ cols: 80, rows: 24, allowProposedApi: true, scrollback: 0 })
  let drawnAt = performance.now()
  child.stdout!.on('data', (chunk: Buffer) => {
    drawnAt = performance.now()
    emulator.write(chunk)
  })
  /** What is on the screen once nothing more is being drawn: keys pressed at an older picture would go elsewhere. */
  const screen = async () => {
    for (let waited = 0; performance.now() - drawnAt < STILL && waited < MOST_WAITED; waited += STILL) await wait(STILL)
    await new Promise<void>((done) => emulator.write('', done))
    const { active } = emulator.buffer
    return Array.from({ length: 24 }, (_, y) => active.getLine(y)?.translateToString(true) ?? '').join('\n')
  }
  return { child, screen }
}

/** Asks the program for its figures and waits for them. */
async function sampleOf(log: string, count: number, minute: number, throws: number): Promise<Sample> {
  process.kill(Number(readFileSync(`${log}.pid`, 'utf8')), 'SIGUSR2')
  for (let waited = 0; waited < 150; waited++) {
    await wait(200)
    const lines = existsSync(log) ? readFileSync(log, 'utf8').split('\n').slice(0, -1) : []
    if (lines.length > count)
      return { minute, throws, ...(JSON.parse(lines[count]!) as Omit<Sample, 'minute' | 'throws'>) }
  }
  throw new Error('The program told no figures within half a minute.')
}

function told({ minute, heapUsed, thinker, external, rss, processorSeconds, timers }: Sample): string {
  const megabytes = (bytes: number | null) => (bytes === null ? '-' : (bytes / MEGABYTE).toFixed(1))
  return (
    `minute ${minute.toFixed(1)}: heap ${megabytes(heapUsed)} MB, thinker ${megabytes(thinker)} MB, ` +
    `outside the heap ${megabytes(external)} MB, resident ${megabytes(rss)} MB, ` +
    `${processorSeconds.toFixed(0)} s of processor, ${timers} timers`
  )
}
