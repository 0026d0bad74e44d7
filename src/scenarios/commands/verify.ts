import { blockTotal } from '../../sim/world/block/advance.js'
import { scenarioFrom } from '../files/scenario/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { visibleLine } from '../files/text/visible-text.js'
import { builtInScenario } from '../library/library.js'
import { originWords } from '../reports/debrief/origin-words.js'
import { isBlockOver } from '../store/block-over.js'
import { carryTableHash, scenarioHash } from '../store/hashes.js'
import { modelFingerprint } from '../store/model-fingerprint.js'
import { type BlockRecord, readRecord } from '../store/record.js'
import { recordDigest } from '../store/record-digest.js'
import { RECORD_VERSION } from '../store/record-schema.js'
import { replayRecord } from '../store/replay.js'
import { VERSION } from '../store/version.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

interface Verified {
  readonly record: string
  readonly same: boolean
  readonly words: string
  readonly total: number | null
  readonly finished: boolean | null
  /** What is otherwise than with a record made here and now, one sentence each; the throws come out the same all the same. */
  readonly differences: readonly string[]
  /** Names the record as it was filed, to be read out and compared; null where it is not the same, or of the first version. */
  readonly digest: string | null
  readonly told: ReturnType<typeof toldOf> | null
  readonly missing: boolean
}

/** Replays records, every one of them: each comes out the same to the pin and as it was filed, or is told where it does not. */
export async function verifyCommand(
  paths: readonly string[],
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const verified: Verified[] = []
  const progress = progressOn(console, 'records')
  for (const [index, path] of paths.entries()) {
    const one = await verifyOne(path)
    progress.reached(index + 1, paths.length)
    verified.push(one)
    if (options.json) continue
    if (one.missing) for (const line of one.words.split('\n')) console.tell(line)
    else printText(console, one.words)
    for (const line of [...toldLines(one), ...one.differences]) console.print(`  ${line}`)
  }
  progress.over()
  if (options.json) printText(console, jsonText({ verified: verified.map(({ missing: _missing, ...one }) => one) }))
  if (verified.every(({ same }) => same)) return EXIT.fine
  return verified.some(({ missing }) => missing) ? EXIT.missingFile : EXIT.checkFailed
}

async function verifyOne(path: string): Promise<Verified> {
  try {
    const record = await readRecord(path)
    const { states } = replayRecord(record, path)
    const ended = states[states.length - 1]!
    const total = blockTotal(ended)
    const finished = isBlockOver(record.origin.cameToBe, ended)
    const score = ended.balls.length === 0 ? 'nothing scored' : `${finished ? 'total' : 'so far'} ${total}`
    const words = visibleLine(
      `${path}: the same, ${ended.throws.length} throws, ${finished ? '' : 'unfinished, '}${score}`,
    )
    const digest = record.version === 1 ? null : recordDigest(record)
    const differences = differencesOf(record)
    return {
      record: path,
      same: true,
      words,
      total,
      finished,
      differences,
      digest,
      told: toldOf(record),
      missing: false,
    }
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    const words = fault.sentences.map(visibleLine).join('\n')
    const nothing = { total: null, finished: null, differences: [], digest: null, told: null }
    return { record: path, same: false, words, ...nothing, missing: fault.missing }
  }
}

/** What nothing but the digest vouches for, printed so that whoever asked for the block sees it. */
function toldOf(record: BlockRecord) {
  const { player = null, name, scenario, seed, program, block, origin, decisions } = record
  return {
    player,
    scenario: name,
    title: scenario.title,
    scenarioHash: record.scenarioHash,
    seed,
    program,
    model: record.model,
    carryTable: record.carryTable,
    block,
    origin,
    madeBy: decisions.map(({ by }) => by),
    ...{ words: originWords(record) },
  }
}

function toldLines({ told, digest }: Verified): string[] {
  if (!told) return []
  return [
    `player ${told.player ?? 'unnamed'}; ${told.title} (${told.scenario} ${told.scenarioHash}), seed ${told.seed}`,
    told.words,
    ...(told.block === null ? [] : [`block ${told.block}`]),
    ...(digest === null ? [] : [`record ${digest}`]),
  ]
}

function differencesOf(record: BlockRecord): string[] {
  const { version, program, model, carryTable, name } = record
  const [ownModel, ownTable] = [modelFingerprint(), carryTableHash()]
  return [
    ...(version < RECORD_VERSION
      ? ['a record of version 1: only the pins vouch for its choices, and nothing for its player, names and length']
      : []),
    ...(program === VERSION ? [] : [`it says that program ${program} made it, and this is ${VERSION}`]),
    ...(model === ownModel ? [] : [`it says that model ${model} threw its pins, and this is ${ownModel}`]),
    ...(carryTable === ownTable ? [] : [`it says that carry table ${carryTable} priced it, and this is ${ownTable}`]),
    ...(isOtherThanBuiltIn(record)
      ? [`its ${name} is not the one that is built in: another bowler, bag, oil or length`]
      : []),
  ]
}

function isOtherThanBuiltIn({ name, scenarioHash: hash }: BlockRecord): boolean {
  const builtIn = builtInScenario(name)
  return builtIn !== undefined && scenarioHash(scenarioFrom(name, locateNowhere(name, builtIn)).data) !== hash
}
