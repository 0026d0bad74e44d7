import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BenchRow, figuresOf } from './measure.js'

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const PROGRAM = join(ROOT, 'dist', 'cli.js')
const RUNS = 9
const WARM_UP = 2
/** The painter begins every frame so (synchronised output). */
const FRAME_BEGINS = '\u001B[?2026h'

/** Milliseconds until a command under a terminal of its own has written `mark`; the command is then told to quit. */
function millisecondsUntil(command: string, mark: string, data: string): Promise<number> {
  const start = performance.now()
  const child = spawn('script', ['-qec', command, '/dev/null'], {
    stdio: ['pipe', 'pipe', 'ignore'],
    env: { ...process.env, TERM: 'xterm-256color', COLORTERM: 'truecolor', DRYBOARD_DATA: data },
  })
  return new Promise((resolve, reject) => {
    let written = ''
    let taken = Number.NaN
    child.stdout.on('data', (chunk: Buffer) => {
      if (taken >= 0) return
      written += chunk.toString('utf8')
      if (!written.includes(mark)) return
      taken = performance.now() - start
      child.stdin.write('q')
    })
    child.on('error', reject)
    child.on('close', () => {
      if (taken >= 0) resolve(taken)
      else reject(new Error(`${command} never wrote a frame; it wrote: ${JSON.stringify(written.slice(0, 200))}`))
    })
  })
}

async function timesUntil(command: string, mark: string, data: string): Promise<number[]> {
  const values: number[] = []
  for (let run = 0; run < WARM_UP + RUNS; run++) values.push(await millisecondsUntil(command, mark, data))
  return values.slice(WARM_UP)
}

/** The built program's first frame on a terminal, by the clock on the wall, beside a Node process that writes one line. */
export async function benchFirstPaint(): Promise<BenchRow[]> {
  if (!existsSync(PROGRAM)) throw new Error('There is no dist/cli.js; run npm run build first.')
  const data = mkdtempSync(join(tmpdir(), 'dryboard-bench-'))
  try {
    const paint = await timesUntil(`"${process.execPath}" "${PROGRAM}"`, FRAME_BEGINS, data)
    const bare = await timesUntil(`"${process.execPath}" -e "console.log('up')"`, 'up', data)
    const help = await timesUntil(`"${process.execPath}" "${PROGRAM}" --help`, 'SCENARIO is', data)
    const beside = { name: 'bare Node', median: figuresOf(bare).median }
    return [
      { name: 'first paint', unit: 'ms', measured: figuresOf(paint), goal: { most: 300, of: 'median' }, beside },
      { name: '--help', unit: 'ms', measured: figuresOf(help), beside },
    ]
  } finally {
    rmSync(data, { recursive: true, force: true })
  }
}
