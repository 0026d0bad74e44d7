import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BenchRow, type Figures, figuresOf, type Taken } from './measure.js'

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const PROGRAM = join(ROOT, 'dist', 'cli.js')
const RUNS = 9
const WARM_UP = 2
/** The painter begins every frame so (synchronised output). */
const FRAME_BEGINS = '\u001B[?2026h'

/** Linux counts processor time by hundredths of a second. */
const MILLISECONDS_A_TICK = 10

/** Processor time of a process and all under it, where the system tells (Linux, proc(5)); else NaN. */
function processorMilliseconds(pid: number): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ')
    const own = (Number(fields[11]) + Number(fields[12])) * MILLISECONDS_A_TICK
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ').filter(Boolean)
    return children.reduce((sum, child) => sum + processorMilliseconds(Number(child)), own)
  } catch {
    return Number.NaN
  }
}

/** Milliseconds until a command under a terminal of its own has written `mark`; the command is then told to quit. */
function takenUntil(command: string, mark: string, data: string): Promise<Taken> {
  const start = performance.now()
  const child = spawn('script', ['-qec', command, '/dev/null'], {
    stdio: ['pipe', 'pipe', 'ignore'],
    env: { ...process.env, TERM: 'xterm-256color', COLORTERM: 'truecolor', DRYBOARD_DATA: data },
  })
  return new Promise((resolve, reject) => {
    let written = ''
    let taken: Taken | null = null
    child.stdout.on('data', (chunk: Buffer) => {
      if (taken) return
      written += chunk.toString('utf8')
      if (!written.includes(mark)) return
      taken = { wall: performance.now() - start, processor: processorMilliseconds(child.pid ?? 0) }
      child.stdin.write('q')
    })
    child.on('error', reject)
    child.on('close', () => {
      if (taken) resolve(taken)
      else reject(new Error(`${command} never wrote a frame; it wrote: ${JSON.stringify(written.slice(0, 200))}`))
    })
  })
}

async function timesUntil(command: string, mark: string, data: string): Promise<Taken[]> {
  const values: Taken[] = []
  for (let run = 0; run < WARM_UP + RUNS; run++) values.push(await takenUntil(command, mark, data))
  return values.slice(WARM_UP)
}

const wallOf = (runs: readonly Taken[]): Figures => figuresOf(runs.map(({ wall }) => wall))
const processorOf = (runs: readonly Taken[]): Figures => figuresOf(runs.map(({ processor }) => processor))

/** The built program's first frame on a terminal, by the clock on the wall, beside a Node process that writes one line. */
export async function benchFirstPaint(): Promise<BenchRow[]> {
  if (!existsSync(PROGRAM)) throw new Error('There is no dist/cli.js; run npm run build first.')
  const data = mkdtempSync(join(tmpdir(), 'dryboard-bench-'))
  try {
    const paint = await timesUntil(`"${process.execPath}" "${PROGRAM}"`, FRAME_BEGINS, data)
    const bare = await timesUntil(`"${process.execPath}" -e "console.log('up')"`, 'up', data)
    const help = await timesUntil(`"${process.execPath}" "${PROGRAM}" --help`, 'SCENARIO is', data)
    const beside = { name: 'bare Node', median: wallOf(bare).median }
    return [
      { name: 'first paint', unit: 'ms', measured: wallOf(paint), goal: { most: 300, of: 'median' }, beside },
      {
        name: 'first paint, processor time',
        unit: 'ms',
        measured: processorOf(paint),
        beside: { name: 'bare Node', median: processorOf(bare).median },
      },
      { name: '--help', unit: 'ms', measured: wallOf(help), beside },
    ]
  } finally {
    rmSync(data, { recursive: true, force: true })
  }
}
