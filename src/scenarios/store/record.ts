import type { z } from 'zod'
import type { BlockState, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { type LocatedData, readSourceText } from '../files/text/source-text.js'
import type { ContestSection } from './contest-section.js'
import { carryTableHash, checkScenarioHash, scenarioHash } from './hashes.js'
import { modelFingerprint } from './model-fingerprint.js'
import { isPlayersOwn, type MadeBy, type Origin, UNKNOWN_ORIGIN } from './origin.js'
import { checkRecordDigest, recordDigest } from './record-digest.js'
import { type KeptDecision, RECORD_FORMAT, RECORD_VERSION, recordSchema, recordSchema1 } from './record-schema.js'
import { VERSION } from './version.js'

type WrittenRecord = z.output<typeof recordSchema>

/**
 * A block as kept: the scenario, the seed and the decisions, from which everything else is replayed, with where it comes from.
 * Each decision carries the pins it left, so that a replay by a changed model is noticed instead of believed.
 */
export type BlockRecord = Omit<WrittenRecord, 'digest' | 'version'> & {
  /** The file's; what a first one does not tell is `unknown` or null here. */
  readonly version: 1 | 2
}

/** What a record tells of a block beside its throws. */
export interface RecordAbout {
  readonly block?: string | null
  readonly player?: string
  readonly origin?: Origin
  /** By the throw's number; the player where it is left out and the origin is known. */
  readonly madeBy?: readonly MadeBy[]
  readonly contest?: ContestSection | undefined
}

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
export function recordOf(scenario: Scenario, state: BlockState, about: RecordAbout = {}): BlockRecord {
  const { block = null, player, origin = UNKNOWN_ORIGIN, madeBy = [], contest } = about
  const usual = about.origin === undefined ? 'unknown' : 'player'
  return {
    format: RECORD_FORMAT,
    version: RECORD_VERSION,
    block,
    origin,
    ...blockNames(scenario, state.seed, player),
    ...(contest === undefined ? {} : { contest }),
    decisions: state.throws.map((thrown, index) => keptDecision(thrown, madeBy[index] ?? usual)),
  }
}

export function keptDecision({ decision, standingAfter }: ThrowRecord, by: MadeBy): KeptDecision {
  return {
    ball: decision.ballId,
    feet: decision.aim.feetBoard,
    target: decision.aim.targetBoard,
    speed: SPEED_NAMES[decision.aim.speedStep],
    release: decision.release,
    standing: standingAfter,
    by,
  }
}

export function decisionsOf({
  decisions,
}: {
  readonly decisions: readonly Omit<KeptDecision, 'standing' | 'by'>[]
}): Decision[] {
  return decisions.map(({ ball, feet, target, speed, release }) => ({
    ballId: ball,
    aim: { feetBoard: feet, targetBoard: target, speedStep: SPEED_STEPS[speed] },
    release,
  }))
}

/** By the throw's number: whether what it cost is the player's own. */
export function ownThrows({ decisions, origin }: Pick<BlockRecord, 'decisions' | 'origin'>): boolean[] {
  return decisions.map(({ by }) => isPlayersOwn(by, origin.cameToBe))
}

/** What a block's files are called, before a number and an ending; an entry of a contest by whose it is, for its seed is held back. */
export function fileStem({
  name,
  seed,
  player = '',
  contest,
}: Pick<BlockRecord, 'name' | 'seed' | 'player' | 'contest'>): string {
  const words = contest === undefined ? [name, seed] : [contest.title, player]
  return words
    .join('-')
    .replaceAll(/[^A-Za-z0-9-]+/g, '-')
    .slice(0, 80)
}

const BLOCK_DIGITS = 6
/** Of the 255 bytes that file systems give a name. */
const LONGEST_PART_BYTES = 64

/**
 * What its record is called: who played, on which day, which scenario, and how the block's own number begins, so that records of
 * many players can lie in one folder. What is not known is left out.
 */
export function recordStem(record: Pick<BlockRecord, 'name' | 'seed' | 'player' | 'origin' | 'block'>): string {
  const { name, player, origin, block } = record
  if (block === null || origin.begun === null) return fileStem(record)
  const parts = [plainName(player ?? ''), origin.begun.slice(0, 10), plainName(name), block.slice(0, BLOCK_DIGITS)]
  return parts.filter((part) => !/^-*$/.test(part)).join('-')
}

/** Letters of any script stay; whatever a shell or a file system may stumble over becomes a hyphen. */
function plainName(text: string): string {
  let bytes = 0
  return [...text.normalize('NFC').replaceAll(/[^\p{L}\p{N}-]+/gu, '-')]
    .filter((letter) => {
      bytes += Buffer.byteLength(letter)
      return bytes <= LONGEST_PART_BYTES
    })
    .join('')
}

/** A record as it is written, always in the newest version. */
export function recordText(record: BlockRecord): string {
  const written = { ...record, version: RECORD_VERSION }
  return `${JSON.stringify({ ...written, digest: recordDigest(written) }, null, 1)}\n`
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
  return versionOf(source.data) === 1 ? firstRecord(path, source) : todaysRecord(path, source)
}

function todaysRecord(path: string, source: LocatedData): BlockRecord {
  const checked = recordSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  checkScenarioHash(path, source.data)
  checkRecordDigest(path, source.data)
  const { digest: _digest, ...record } = checked.data
  return record
}

function firstRecord(path: string, source: LocatedData): BlockRecord {
  const checked = recordSchema1.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  checkScenarioHash(path, source.data)
  const decisions = checked.data.decisions.map((one) => ({ ...one, by: 'unknown' as const }))
  return { ...checked.data, block: null, origin: UNKNOWN_ORIGIN, decisions }
}

const versionOf = (data: unknown): unknown => (data as { readonly version?: unknown } | null)?.version
