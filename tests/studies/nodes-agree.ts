import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const BUILT = join(ROOT, 'dist')
/** A copy, so that a build meanwhile changes nothing. */
const COPY = mkdtempSync(join(tmpdir(), 'dryboard-agree-'))
const PROGRAM = join(COPY, 'dist', 'cli.js')
const SOURCE_RUNNER = join(ROOT, 'node_modules', 'tsx', 'dist', 'cli.mjs')
const GOLDEN = join(ROOT, 'tests', 'golden', 'refresh.ts')

/** How a version of Node is started: this one, or one fetched by npx from the registry's `node` package. */
interface Engine {
  readonly name: string
  readonly command: readonly string[]
}

const fetched = (major: number): Engine => ({
  name: `node@${major}`,
  command: ['npx', '--yes', '--package', `node@${major}`, 'node'],
})

const ENGINES: readonly Engine[] = [
  { name: 'this Node', command: [process.execPath] },
  { name: 'this Node again', command: [process.execPath] },
  fetched(22),
  fetched(24),
]

const auto = (scenario: string, policy: string): string[] => [
  PROGRAM,
  'auto',
  scenario,
  '--policy',
  policy,
  '--seed',
  'agree',
  '--json',
]

const RUNS: readonly (readonly [name: string, args: readonly string[]])[] = [
  ['auto house-forty thumb', auto('house-forty', 'thumb')],
  ['auto flat-forty-four stay', auto('flat-forty-four', 'stay')],
  ['auto short-thirty-five random', auto('short-thirty-five', 'random')],
  ['auto unseen-draw thumb', auto('unseen-draw', 'thumb')],
  ['auto short-thirty-five known', auto('short-thirty-five', 'known')],
  ['auto house-forty fair', auto('house-forty', 'fair')],
  ['every bit of the golden blocks', [SOURCE_RUNNER, GOLDEN, '--print']],
]

const execute = promisify(execFile)

async function output({ command: [program, ...before] }: Engine, args: readonly string[]): Promise<string> {
  const { stdout } = await execute(program!, [...before, ...args], { cwd: ROOT, maxBuffer: 1 << 26 })
  return stdout
}

/**
 * Runs the built program and the golden blocks under several versions of Node and compares what they print, byte by byte.
 * Words after the study's name pick the runs that have one of them in their name.
 */
export async function run(words: readonly string[] = []): Promise<void> {
  if (!existsSync(join(BUILT, 'cli.js'))) throw new Error('There is no dist/cli.js; run npm run build first.')
  try {
    cpSync(BUILT, join(COPY, 'dist'), { recursive: true })
    cpSync(join(ROOT, 'package.json'), join(COPY, 'package.json'))
    await compare(RUNS.filter(([name]) => words.length === 0 || words.some((word) => name.includes(word))))
  } finally {
    rmSync(COPY, { recursive: true, force: true })
  }
}

async function compare(runs: typeof RUNS): Promise<void> {
  const versions = await Promise.all(ENGINES.map(async (engine) => (await output(engine, ['--version'])).trim()))
  console.log(['', ...ENGINES.map(({ name }, index) => `${name} (${versions[index]})`)].join(' | '))
  let disagreements = 0
  for (const [name, args] of runs) {
    const digests: string[] = []
    for (const engine of ENGINES) {
      const text = await output(engine, args)
      digests.push(`${createHash('sha256').update(text).digest('hex').slice(0, 12)}, ${text.length} bytes`)
    }
    const agree = digests.every((digest) => digest === digests[0])
    if (!agree) disagreements++
    console.log([name, ...digests, agree ? 'agree' : 'DISAGREE'].join(' | '))
  }
  console.log(disagreements === 0 ? 'All agree to the byte.' : `${disagreements} of ${runs.length} disagree.`)
  if (disagreements > 0) process.exitCode = 1
}
