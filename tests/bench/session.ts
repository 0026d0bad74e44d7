import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import xterm from '@xterm/headless'
import seedrandom from 'seedrandom'
import { type BenchRow, figuresOf } from './measure.js'
import { sessionPlayer } from './session-player.js'
import { slopeOf } from './slope.js'

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const PROBE = fileURLToPath(new URL('session-probe.mjs', import.meta.url))
const MINUTE = 60_000
const THINKING_MILLISECONDS = [5000, 8000] as const
const KEY_MILLISECONDS = 250
const MINUTES_A_SAMPLE = 2
/** Code is still being compiled and caches filled in the first minutes; slopes leave them out. */
const WARM_UP_MINUTES = 6
const MEGABYTE = 1 << 20

interface Sample {
  readonly minute: number
  readonly heapUsed: number
  /** Of the thread that thinks; null before there is one. */
  readonly thinker: number | null
  readonly external: number
  readonly rss: number
  readonly processorSeconds: number
  readonly timers: number
}

/**
 * Memory of the built program while somebody plays it for `minutes` at a player's pace: a copy of it in a terminal of its own,
 * a player who reads that terminal's screen, and every two minutes what is left after all garbage is collected.
 */
export async function benchSession(minutes: number): Promise<BenchRow[]> {
  if (!existsSync(join(ROOT, 'dist', 'cli.js'))) throw new Error('There is no dist/cli.js; run npm run build first.')
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-session-'))
  try {
    cpSync(join(ROOT, 'dist'), join(folder, 'dist'), { recursive: true })
    const { samples, moves, throws } = await play(folder, minutes)
    const kept = samples.filter(({ minute }) => minute >= Math.min(WARM_UP_MINUTES, minutes / 5))
    return [
      { name: 'moves of the player', unit: '', measured: figuresOf([moves]) },
      { name: 'throws', unit: '', measured: figuresOf([throws]) },
      ...memoryRows('heap of the screen', kept, ({ heapUsed }) => heapUsed),
      ...memoryRows('heap of the thinker', kept, ({ thinker }) => thinker ?? Number.NaN),
      ...memoryRows('resident set', kept, ({ rss }) => rss),
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function memoryRows(name: string, samples: readonly Sample[], bytesOf: (sample: Sample) => number): BenchRow[] {
  const points = samples.map((sample) => [sample.minute, bytesOf(sample) / MEGABYTE] as const)
  const known = points.filter(([, megabytes]) => Number.isFinite(megabytes))
  const level: BenchRow = { name, unit: 'MB', measured: figuresOf(known.map(([, megabytes]) => megabytes)) }
  if (known.length < 4) return [level]
  const { slope, halfWidth } = slopeOf(known)
  const said = `${name}, growth an hour (95 %: ${sign(60 * (slope - halfWidth))} to ${sign(60 * (slope + halfWidth))})`
  return [level, { name: said, unit: 'MB', measured: figuresOf([60 * slope]) }]
}

const sign = (value: number): string => (value < 0 ? `−${(-value).toFixed(1)}` : `+${value.toFixed(1)}`)

async function play(folder: string, minutes: number) {
  const log = join(folder, 'probe.jsonl')
  const { child, screen } = open(folder, log)
  const ended = new Promise<void>((done) => child.on('close', () => done()))
  let isOver = false
  ended.then(() => (isOver = true))
  const player = sessionPlayer('session')
  const pace = seedrandom.alea('pace')
  const start = performance.now()
  const minute = () => (performance.now() - start) / MINUTE
  let moves = 0
  let throws = 0
  let nextSample = MINUTES_A_SAMPLE
  const samples: Sample[] = []
  await wait(2000)
  while (minute() < minutes && !isOver) {
    const move = player(await screen())
    if (move.length > 0) moves++
    if (move.at(-1) === '\r' && (await screen()).includes('Enter throw')) throws++
    for (const key of move) {
      child.stdin!.write(key)
      await wait(KEY_MILLISECONDS)
    }
    const [least, most] = THINKING_MILLISECONDS
    await wait(move.length === 0 ? 1000 : least + pace() * (most - least))
    if (minute() < nextSample && minute() < minutes) continue
    samples.push(await sampleOf(log, samples.length, minute()))
    nextSample += MINUTES_A_SAMPLE
    process.stderr.write(`${told(samples.at(-1)!)}, ${throws} throws\n`)
  }
  if (isOver) throw new Error(`The program ended by itself after ${minute().toFixed(1)} minutes:\n${await screen()}`)
  child.stdin!.write('\u001B')
  await wait(500)
  child.stdin!.write('q')
  await Promise.race([ended, wait(5000)])
  child.kill()
  return { samples, moves, throws }
}

function open(folder: string, log: string): { child: ChildProcess; screen: () => Promise<string> } {
  const program = [process.execPath, '--expose-gc', '--import', PROBE, join(folder, 'dist', 'cli.js')]
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
  child.stdout!.on('data', (chunk: Buffer) => emulator.write(chunk))
  const screen = async () => {
    await new Promise<void>((done) => emulator.write('', done))
    const { active } = emulator.buffer
    return Array.from({ length: 24 }, (_, y) => active.getLine(y)?.translateToString(true) ?? '').join('\n')
  }
  return { child, screen }
}

/** Asks the program for its figures and waits for them. */
async function sampleOf(log: string, count: number, minute: number): Promise<Sample> {
  process.kill(Number(readFileSync(`${log}.pid`, 'utf8')), 'SIGUSR2')
  for (let waited = 0; waited < 150; waited++) {
    await wait(200)
    const lines = existsSync(log) ? readFileSync(log, 'utf8').split('\n').slice(0, -1) : []
    if (lines.length > count) return { minute, ...(JSON.parse(lines[count]!) as Omit<Sample, 'minute'>) }
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
