import { readFile } from 'node:fs/promises'
import { z } from 'zod'
import type { BlockState, Decision } from '../sim/block/types.js'
import { writeUnderFreeName } from './atomic-write.js'
import { modelFingerprint } from './model-fingerprint.js'
import { problemSentences } from './problems.js'
import type { Scenario } from './scenario.js'
import { ScenarioError } from './scenario-error.js'
import { identifier, line, listOf, oneOf, table, wholeFrom } from './schema/fields.js'
import { scenarioSchema } from './schema/scenario.js'
import { readSourceText } from './source-text.js'
import { VERSION } from './version.js'

const FORMAT = 'dryboard-record'

const decisionSchema = table(
  {
    ball: identifier(),
    feet: z.number(),
    target: z.number(),
    speed: oneOf('softer', 'usual', 'firmer'),
    release: oneOf('strike', 'spare'),
    standing: wholeFrom(0, 1023),
  },
  'a decision and the pins left standing after it',
)

const recordSchema = table(
  {
    format: z.literal(FORMAT, { error: () => `"${FORMAT}"` }),
    version: z.literal(1, { error: () => '1, the only version this program knows' }),
    program: line(40),
    model: line(80),
    name: line(200),
    scenario: scenarioSchema,
    seed: line(80),
    decisions: listOf(decisionSchema, 0, 2000, 'decisions'),
  },
  'a record',
)

/**
 * A block as kept: the scenario, the seed and the decisions, from which everything else is replayed. Each decision
 * carries the pins it left, so that a replay by a changed model is noticed instead of believed.
 */
export type BlockRecord = z.output<typeof recordSchema>

const SPEED_STEPS = { softer: -1, usual: 0, firmer: 1 } as const
const SPEED_NAMES = { [-1]: 'softer', 0: 'usual', 1: 'firmer' } as const

/** The record of a block, finished or not. */
export function recordOf(scenario: Scenario, state: BlockState): BlockRecord {
  return {
    format: FORMAT,
    version: 1,
    program: VERSION,
    model: modelFingerprint(),
    name: scenario.name,
    scenario: scenario.data,
    seed: state.seed,
    decisions: state.throws.map(({ decision, standingAfter }) => ({
      ball: decision.ballId,
      feet: decision.aim.feetBoard,
      target: decision.aim.targetBoard,
      speed: SPEED_NAMES[decision.aim.speedStep],
      release: decision.release,
      standing: standingAfter,
    })),
  }
}

export function decisionsOf(record: BlockRecord): Decision[] {
  return record.decisions.map(({ ball, feet, target, speed, release }) => ({
    ballId: ball,
    aim: { feetBoard: feet, targetBoard: target, speedStep: SPEED_STEPS[speed] },
    release,
  }))
}

/**
 * Writes a record into a folder under the first free name and returns its path.
 *
 * @throws WriteError
 */
export async function writeRecord(record: BlockRecord, folder: string): Promise<string> {
  const stem = `${record.name}-${record.seed}`.replaceAll(/[^A-Za-z0-9-]+/g, '-').slice(0, 80)
  return writeUnderFreeName(folder, stem, recordText(record))
}

export function recordText(record: BlockRecord): string {
  return `${JSON.stringify(record, null, 1)}\n`
}

/**
 * Reads a record and checks all of it, the scenario inside included.
 *
 * @throws ScenarioError with every problem as `file:line:column field: what was found; allowed is ...`.
 */
export async function readRecord(path: string): Promise<BlockRecord> {
  let text: string
  try {
    text = await readFile(path, 'utf8')
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code
    throw new ScenarioError(
      [`${path}: ${code === 'ENOENT' ? 'there is no such file' : `cannot be read (${code})`}.`],
      true,
    )
  }
  const source = readSourceText(path, text)
  const checked = recordSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  return checked.data
}
