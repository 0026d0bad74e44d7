import { createHash } from 'node:crypto'
import { type Scenario, scenarioFrom } from '../../files/scenario/scenario.js'
import { PACK_FORMAT, PACK_VERSION } from '../../files/schema/contest-formats.js'
import { type Pack, packSchema, sealedTextSchema } from '../../files/schema/contest-pack.js'
import type { ContestRules } from '../../files/schema/contest-rules.js'
import { refuseNewer } from '../../files/text/newer-version.js'
import { problemSentences } from '../../files/text/problems.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../../files/text/source-text.js'
import { GRADE_REVISION } from '../../store/grade-revision.js'
import { canonicalText, carryTableHash, scenarioHash } from '../../store/hashes.js'
import { modelFingerprint } from '../../store/model-fingerprint.js'
import { isSignedBy, type SigningKey, signatureOf } from '../../store/signing.js'
import { VERSION } from '../../store/version.js'
import { openedText, sealText } from './passphrase.js'

/** What the passphrase gives: the lane and the luck. */
export interface OpenedPack {
  readonly pack: Pack
  readonly digest: string
  readonly seed: string
  readonly scenario: Scenario
}

interface PackToSeal {
  readonly contest: string
  readonly sealedAt: string
  readonly rules: ContestRules
  readonly scenario: Scenario
  /** 64 hexadecimal digits: 256 bits. */
  readonly seed: string
  readonly passphrase: string
  readonly key: SigningKey
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

/** Names a pack by all that is in it. */
export const packDigest = (pack: Pack): string => sha256(canonicalText(pack))

type Committed = Pick<Pack, 'contest' | 'rules' | 'scenarioHash' | 'model'>

/** What is published of a seed before it may be known: a hash commitment over it and all that it decides. */
export const commitmentOf = ({ contest, rules, scenarioHash: scenario, model }: Committed, seed: string): string =>
  sha256(canonicalText(['dryboard contest 1', contest, rules, scenario, model, seed]))

/** What the seal is bound to, so that it opens in its own pack only. */
const boundTo = ({ contest, commitment }: Pick<Pack, 'contest' | 'commitment'>): string => `${contest} ${commitment}`

/** Makes a contest's pack: seed and lane under the passphrase, all of it signed. */
export function sealPack({ contest, sealedAt, rules, scenario, seed, passphrase, key }: PackToSeal): Pack {
  const names = {
    contest,
    rules,
    scenarioHash: scenarioHash(scenario.data),
    model: modelFingerprint(),
  }
  const commitment = commitmentOf(names, seed)
  const unsigned = {
    format: PACK_FORMAT,
    version: PACK_VERSION,
    sealedAt,
    program: VERSION,
    scenario: scenario.name,
    lane: scenario.title,
    carryTable: carryTableHash(),
    gradeRevision: GRADE_REVISION,
    ...names,
    commitment,
    sealed: sealText(JSON.stringify({ seed, scenario: scenario.data }), passphrase, boundTo({ contest, commitment })),
    organiser: key.publicText,
  } as const
  return { ...unsigned, signature: signatureOf(unsigned, key) }
}

/**
 * Reads a pack and checks its organiser's signature.
 *
 * @throws ScenarioError
 */
export async function readPack(path: string): Promise<Pack> {
  return packFromText(path, await readTextFile(path))
}

/** The same from text. @throws ScenarioError */
export function packFromText(path: string, text: string): Pack {
  const source = readSourceText(path, text)
  refuseNewer(source, PACK_VERSION)
  const checked = packSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const { signature, ...unsigned } = checked.data
  if (!isSignedBy(unsigned, signature, unsigned.organiser))
    throw new ScenarioError([
      `${source.place(['signature'], 'value').text} signature: the pack is not as its organiser signed it.`,
    ])
  return checked.data
}

/**
 * Opens a pack and checks that what was under the seal is what was committed to.
 *
 * @param path for sentences
 * @throws ScenarioError
 */
export function openPack(path: string, pack: Pack, passphrase: string): OpenedPack {
  const text = openedText(pack.sealed, passphrase, boundTo(pack))
  if (text === null) throw new ScenarioError([`${path}: that is not the passphrase of this contest.`])
  const checked = sealedTextSchema.safeParse(JSON.parse(text))
  if (!checked.success) throw new ScenarioError([`${path}: what is under the seal is no lane and seed.`])
  const { seed, scenario: data } = checked.data
  const scenario = scenarioFrom(pack.scenario, locateNowhere(`${path} scenario`, data))
  if (scenarioHash(scenario.data) !== pack.scenarioHash || commitmentOf(pack, seed) !== pack.commitment)
    throw new ScenarioError([`${path}: what is under the seal is not what the organiser committed to.`])
  return { pack, digest: packDigest(pack), seed, scenario }
}

/**
 * Refuses a pack that this program would play otherwise than the one that sealed it.
 *
 * @throws ScenarioError
 */
export function checkModel(path: string, { model, carryTable, program }: Pack): void {
  const [ownModel, ownTable] = [modelFingerprint(), carryTableHash()]
  if (model === ownModel && carryTable === ownTable) return
  throw new ScenarioError([
    `${path}: it was sealed by program ${program} with model ${model} and carry table ${carryTable}; this one has ${ownModel} and ${ownTable}, and all must play by the same.`,
  ])
}
