import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { z } from 'zod'
import type { Answered } from '../../sim/analysis/practice/learner.js'
import { KINDS, SKILLS } from '../../sim/analysis/practice/position.js'
import { syncFolder, WriteError } from '../files/text/atomic-write.js'
import { type FileLayer, NODE_FILES } from '../files/text/file-layer.js'
import { LOCAL_TIME, localTime } from '../files/text/local-time.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { dayOf } from './day.js'

/**
 * A player's practice: a text file that only grows, one in the data folder for each player. Its first line names it; each later line is one
 * position as it was answered. A line counts once its line end is written.
 */
export interface PracticeLog {
  readonly path: string
  readonly answers: readonly Answered[]
}

const FORMAT = 'dryboard-practice'
const VERSION = 1

const head = z.strictObject({
  format: z.literal(FORMAT, { error: () => `"${FORMAT}"` }),
  version: z.literal(VERSION, { error: () => String(VERSION) }),
  player: z.string({ error: () => 'a name, or empty' }).max(60, 'at most 60 characters'),
})
const pins = z
  .number({ error: () => 'pins from 0 to 300' })
  .min(0, 'pins from 0 to 300')
  .max(300, 'pins from 0 to 300')
const entry = z.strictObject(
  {
    at: z.string({ error: () => 'a local time' }).regex(LOCAL_TIME, 'a local time such as 2026-03-08T19:04:11+01:00'),
    id: z
      .string({ error: () => 'the id of a position' })
      .min(1, 'an id')
      .max(120, 'at most 120 characters'),
    kind: z.enum(KINDS, { error: () => `one of ${KINDS.join(', ')}` }),
    skill: z.enum(SKILLS, { error: () => `one of ${SKILLS.join(', ')}` }),
    family: z.strictObject({
      length: z.enum(['short', 'medium', 'long'], { error: () => 'short, medium or long' }),
      shape: z.enum(['flat', 'between', 'houseLike'], { error: () => 'flat, between or houseLike' }),
    }),
    mode: z.enum(['practice', 'test', 'shown'], { error: () => 'practice, test or shown' }),
    pins,
    blindPins: pins,
    difficulty: z
      .number({ error: () => 'a number from -20 to 20' })
      .min(-20, 'a number from -20 to 20')
      .max(20, 'a number from -20 to 20'),
    isSound: z.boolean({ error: () => 'true or false' }),
    sureShare: z
      .number({ error: () => 'a share from 0 to 1' })
      .min(0, 'a share from 0 to 1')
      .max(1, 'a share from 0 to 1')
      .nullable(),
  },
  { error: () => 'one answered position' },
)
type Entry = z.output<typeof entry>

/** Where a player's practice is kept. Two names never share a file; nobody's name gets a file of its own. */
export function practiceLogPath(data: string, player: string | undefined): string {
  const name = (player ?? '').trim()
  const words = name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40)
  const mark = createHash('sha256').update(name).digest('hex').slice(0, 8)
  return join(data, 'practice', name === '' ? 'unnamed.jsonl' : `${words || 'player'}-${mark}.jsonl`)
}

/**
 * What a player practised; nothing where there is no file yet. What a dying program left after the last line end does not count.
 *
 * @throws ScenarioError with one sentence about the first line that is wrong
 */
export async function readPracticeLog(path: string): Promise<PracticeLog> {
  let text: string
  try {
    text = await readTextFile(path)
  } catch (fault) {
    if (fault instanceof ScenarioError && fault.missing && fault.message.includes('there is no such file')) {
      return { path, answers: [] }
    }
    throw fault
  }
  const lines = text
    .slice(0, text.lastIndexOf('\n') + 1)
    .split('\n')
    .slice(0, -1)
  if (lines.length === 0) return { path, answers: [] }
  const first = parsed(`${path}:1`, lines[0])
  refuseNewer(locateNowhere(path, first), VERSION)
  checked(head, `${path}:1`, first)
  const answers = lines.slice(1).map((line, index) => {
    const place = `${path}:${index + 2}`
    const { at, ...answered }: Entry = checked(entry, place, parsed(place, line))
    return { ...answered, day: dayOf(at) }
  })
  return { path, answers }
}

function parsed(place: string, line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    throw new ScenarioError([`${place}: this line is not JSON.`])
  }
}

function checked<Schema extends z.ZodType>(schema: Schema, place: string, data: unknown): z.output<Schema> {
  const result = schema.safeParse(data)
  if (!result.success)
    throw new ScenarioError(problemSentences(locateNowhere(place, data), result.error.issues).slice(0, 1))
  return result.data
}

/**
 * Adds one answered position and returns once it is on the disk.
 *
 * @throws WriteError
 */
export async function keepAnswer(
  path: string,
  { player, answered, when }: { readonly player: string | undefined; readonly answered: Answered; readonly when: Date },
  files: FileLayer = NODE_FILES,
): Promise<void> {
  const { day: _day, ...rest } = answered
  const line = `${JSON.stringify({ at: localTime(when), ...rest })}\n`
  const folder = join(path, '..')
  try {
    await files.mkdir(folder, { recursive: true })
    const before = await wholeText(path, files)
    const file = await files.open(path, 'a', 0o600)
    try {
      if (before.torn) await file.truncate(before.bytes)
      const opening =
        before.bytes === 0
          ? `${JSON.stringify({ format: FORMAT, version: VERSION, player: (player ?? '').trim() })}\n`
          : ''
      try {
        await file.appendFile(opening + line)
        await file.datasync()
      } catch (fault) {
        await file.truncate(before.bytes).catch(() => {})
        throw fault
      }
    } finally {
      await file.close()
    }
    if (before.bytes === 0) await syncFolder(folder, files)
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}

/** Bytes of the whole lines that are there, and whether something torn follows them. */
async function wholeText(path: string, files: FileLayer): Promise<{ readonly bytes: number; readonly torn: boolean }> {
  try {
    const text = await files.readFile(path)
    const bytes = (text as Buffer).lastIndexOf(0x0a) + 1
    return { bytes, torn: bytes < text.length }
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return { bytes: 0, torn: false }
    throw fault
  }
}
