import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sweepDrafts } from '../../src/scenarios/files/text/drafts.js'
import { blockStore } from '../../src/scenarios/store/block-store.js'
import { type BlockRecord, readRecord } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { supersededBy } from '../../src/scenarios/store/superseded.js'
import { readJournal } from '../scenarios/store/read-journal.js'
import { runCommand } from './in-process.js'

export interface KilledPlay {
  /** Throws whose result had been told when the program died. */
  readonly told: number
  /** Throws found on the disk afterwards, in a journal or a record. */
  readonly kept: number
  /** Throws after going on with it for three more. */
  readonly after: number
  /** Files that cannot be read back, by name. */
  readonly broken: readonly string[]
  /** Records that a review would count beyond one. */
  readonly twice: number
  /** Drafts, locks and claims still lying about after somebody has come again. */
  readonly drafts: readonly string[]
  /** Whether the block was filed, at once or by whoever came next, and there was nothing to go on with. */
  readonly filed: boolean
}

const THROWS = 24
const RESUMED = 3
/** What node is told to run: the program as it stands. */
const FROM_SOURCE: readonly string[] = ['--import', 'tsx', 'src/cli.ts']

/**
 * Plays a script in a process of its own, kills it outright after it has told `throws` results and so many milliseconds
 * more, looks at what is on the disk, and goes on with it. The script has `most` throws; with as many told, it dies while filing.
 */
export async function killAt(
  throws: number,
  milliseconds: number,
  program = FROM_SOURCE,
  most = THROWS,
): Promise<KilledPlay> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-kill-'))
  const script = join(data, 'script.txt')
  writeFileSync(script, '\n'.repeat(most))
  const argv = ['play', 'house-forty', '--script', script, '--seed', `${throws}`, '--no-grade', '--data', data]
  const told = await playUntilKilled([...program, ...argv], throws, milliseconds)
  return lookedOver(data, told)
}

/** Reads what a killed program left in a data folder, goes on with it by plain play, and takes the folder away. */
export async function lookedOver(data: string, told: number): Promise<KilledPlay> {
  const script = join(data, 'script.txt')
  const left = await filesIn(join(data, 'unfinished'), readJournal)
  const kept = await filesIn(join(data, 'records'), readRecord)
  const count = Math.max(0, ...[...left, ...kept].map((one) => one.throws))
  // Whoever comes next clears away what was only left to be cleared.
  const { blocks } = await blockStore(data).left()
  if (blocks.length > 0) {
    writeFileSync(script, '\n'.repeat(RESUMED))
    await runCommand(['play', '--resume', '--script', script, '--no-grade', '--data', data])
  }
  await sweepDrafts(join(data, 'records'))
  const records = await filesIn(join(data, 'records'), readReplaying)
  const sound = records.flatMap(({ record }) => record ?? [])
  const standing = supersededBy(sound).filter((by) => by === null).length
  const drafts = ['unfinished', 'records', 'notes'].flatMap((name) =>
    existsSync(join(data, name)) ? readdirSync(join(data, name)).filter((one) => /\.(part|lock|claim)$/.test(one)) : [],
  )
  const journals = await filesIn(join(data, 'unfinished'), readJournal)
  const broken = [...left, ...records, ...journals].filter((one) => one.throws < 0 && !one.empty).map((one) => one.name)
  const after = Math.max(0, ...records.map((one) => one.throws))
  rmSync(data, { recursive: true, force: true })
  const isOver = sound.some((record) => replayRecord(record, 'filed').states.at(-1)!.spot === null)
  const filed = count > 0 && (blocks.length === 0 || isOver)
  return { told, kept: count, after, broken, twice: Math.max(0, standing - 1), drafts, filed }
}

async function readReplaying(path: string): Promise<BlockRecord> {
  const record = await readRecord(path)
  replayRecord(record, path)
  return record
}

interface Found {
  readonly name: string
  /** -1 for a file that cannot be read or does not replay. */
  readonly throws: number
  readonly record?: BlockRecord
  /** Whether the program died before the first line of a journal was whole. */
  readonly empty: boolean
}

async function filesIn(folder: string, read: typeof readRecord): Promise<Found[]> {
  const names = existsSync(folder)
    ? readdirSync(folder).filter((name) => /\.jsonl?$/.test(name) && !/\.said\.json$/.test(name))
    : []
  return Promise.all(
    names.map(async (name): Promise<Found> => {
      const path = join(folder, name)
      try {
        const record = await read(path)
        return { name, throws: record.decisions.length, empty: false, record }
      } catch (fault) {
        return { name, throws: -1, empty: /before its first line/.test(String(fault)) }
      }
    }),
  )
}

function playUntilKilled(argv: readonly string[], throws: number, milliseconds: number): Promise<number> {
  const child = spawn(process.execPath, argv, {
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  let out = ''
  let waiting = false
  const told = (): number => out.match(/ Seen: /g)?.length ?? 0
  const maybeKill = (): void => {
    if (waiting || told() < throws) return
    waiting = true
    setTimeout(() => child.kill('SIGKILL'), milliseconds)
  }
  child.stdout.on('data', (chunk) => {
    out += chunk
    maybeKill()
  })
  if (throws === 0) maybeKill()
  return new Promise((resolve) => child.on('close', () => resolve(told())))
}
