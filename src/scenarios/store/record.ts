import type { z } from 'zod'
import type { BlockState, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { writeUnderFreeName } from '../files/text/atomic-write.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { readSourceText } from '../files/text/source-text.js'
import { carryTableHash, checkScenarioHash, scenarioHash } from './hashes.js'
import { modelFingerprint } from './model-fingerprint.js'
import { type KeptDecision, RECORD_FORMAT, RECORD_VERSION, recordSchema } from './record-schema.js'
import { VERSION } from './version.js'

/**
 * A block as kept: the scenario, the seed and the decisions, from which everything else is replayed. Each decision
 * carries the pins it left, so that a replay by a changed model is noticed instead of believed.
 */
export type BlockRecord = z.output<typeof recordSchema>

const SPEED_STEPS = { softer: -1, usual: 0, firmer: 1 } as const
const SPEED_NAMES = { [-1]: 'softer', 0: 'usual', 1: 'firmer' } as const

/** What names a block and the program it is played by; the same in its record and its journal. */
export function blockNames(scenario: Scenario, seed: string, player?: string) {
  return {
    program: VERSION,
    model: modelFingerprint(),
    carryTable: carryTableHash(),
    scenarioHash: scenarioHash(scenario.data),
    name: scenario.name,
    scenario: scenario.data,
    seed,
    ...(player === undefined ? {} : { player }),
  }
}

/** The record of a block, finished or not. */
export function recordOf(scenario: Scenario, state: BlockState, player?: string): BlockRecord {
  return {
    format: RECORD_FORMAT,
    version: RECORD_VERSION,
    ...blockNames(scenario, state.seed, player),
    decisions: state.throws.map(keptDecision),
  }
}

export function keptDecision({ decision, standingAfter }: ThrowRecord): KeptDecision {
  return {
    ball: decision.ballId,
    feet: decision.aim.feetBoard,
    target: decision.aim.targetBoard,
    speed: SPEED_NAMES[decision.aim.speedStep],
    release: decision.release,
    standing: standingAfter,
  }
}

export function decisionsOf({
  decisions,
}: {
  readonly decisions: readonly Omit<KeptDecision, 'standing'>[]
}): Decision[] {
  return decisions.map(({ ball, feet, target, speed, release }) => ({
    ballId: ball,
    aim: { feetBoard: feet, targetBoard: target, speedStep: SPEED_STEPS[speed] },
    release,
  }))
}

/** What a block's files are called, before a number and an ending. */
export function fileStem({ name, seed }: { readonly name: string; readonly seed: string }): string {
  return `${name}-${seed}`.replaceAll(/[^A-Za-z0-9-]+/g, '-').slice(0, 80)
}

/**
 * Writes a record into a folder under the first free name and returns its path.
 *
 * @throws WriteError
 */
export async function writeRecord(record: BlockRecord, folder: string): Promise<string> {
  return writeUnderFreeName(folder, fileStem(record), recordText(record))
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
  return recordFromText(path, await readTextFile(path))
}

/** The same from text. @throws ScenarioError */
export function recordFromText(path: string, text: string): BlockRecord {
  const source = readSourceText(path, text)
  refuseNewer(source, RECORD_VERSION)
  const checked = recordSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  checkScenarioHash(path, source.data)
  return checked.data
}
