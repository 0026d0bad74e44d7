import { type Scenario, scenarioFrom } from '../../files/scenario/scenario.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { locateNowhere } from '../../files/text/source-text.js'
import { workedDebrief } from '../../reports/debrief/worked-debrief.js'
import { isEntrySigned } from '../../store/entry-key.js'
import { canonicalText, carryTableHash, scenarioHash } from '../../store/hashes.js'
import { modelFingerprint } from '../../store/model-fingerprint.js'
import { type BlockRecord, readRecord } from '../../store/record.js'
import { recordDigest } from '../../store/record-digest.js'
import { replayRecord } from '../../store/replay.js'
import { isSignedBy, keyCode } from '../../store/signing.js'
import { momentWords } from '../../words/contest-words.js'
import { isEntryScenario } from '../entry/entry-scenario.js'
import { hostedPart } from '../entry/hosted-chain.js'
import type { OpenedPack } from '../pack/pack.js'
import { type EntryFigures, entryFigures } from './entry-figures.js'

/** Whether an entry counts: ranked; unfinished or out of the contest (told, without a place); refused (not believed). */
type EntryStatus = 'ranked' | 'unfinished' | 'out' | 'refused'

/** An entry looked at by itself. */
export interface CheckedEntry {
  readonly file: string
  readonly status: EntryStatus
  /** Why it is not ranked, one sentence each. */
  readonly reasons: readonly string[]
  /** What the organiser should know of one that is. */
  readonly marks: readonly string[]
  /** Of the file as it is, for telling copies apart; empty where it cannot be read. */
  readonly digest: string
  readonly player: string
  readonly entry: string
  readonly block: string
  readonly code: string
  readonly begun: string
  readonly ended: string
  readonly throws: number
  /** Names the choices and what they left. */
  readonly thrown: readonly string[]
  readonly figures: EntryFigures | null
}

export interface CheckWanted {
  readonly luck: boolean
  /** Where accounts are kept, if choices are to be priced. */
  readonly accounts: string | null
  readonly reached?: (done: number, of: number) => void
}

/**
 * Checks an entry by itself: that its file is whole and signed, of this contest, its lane, luck and model, played by a player, in
 * order of time, and that it comes out the same to the bit. Needs no other entry, so entries can be spread over machines.
 */
export async function checkEntry(path: string, opened: OpenedPack, wanted: CheckWanted): Promise<CheckedEntry> {
  let record: BlockRecord
  try {
    record = await readRecord(path)
  } catch (fault) {
    return refused(path, sentencesOf(fault))
  }
  const wrong = faultsOf(path, record, opened)
  if (wrong.length > 0) return { ...refused(path, wrong), ...told(record) }
  try {
    const { states } = replayRecord(record, path, sharedScenario(opened, record))
    const isFinished = states.at(-1)!.spot === null
    const out = outOfContest(record, opened)
    const status: EntryStatus = out.length > 0 ? 'out' : isFinished ? 'ranked' : 'unfinished'
    const isPriced = wanted.accounts !== null && status === 'ranked'
    const account = isPriced
      ? (
          await workedDebrief(record, {
            path,
            folder: wanted.accounts!,
            reached: wanted.reached ?? (() => {}),
          })
        ).debrief.account
      : null
    return {
      file: path,
      status,
      reasons: [...out, ...(isFinished ? [] : ['it is not finished'])],
      marks: marksOf(record, opened),
      ...told(record),
      figures: entryFigures(states, { luck: wanted.luck && status === 'ranked', account }),
    }
  } catch (fault) {
    return { ...refused(path, sentencesOf(fault)), ...told(record) }
  }
}

const shared = new WeakMap<OpenedPack, Map<string, Scenario>>()

/** One scenario for all entries with the same bowler, so that what its lane is worth is worked out once. */
function sharedScenario(opened: OpenedPack, { scenarioHash: hash, name, scenario }: BlockRecord): Scenario {
  const known = shared.get(opened) ?? new Map<string, Scenario>()
  shared.set(opened, known)
  const one = known.get(hash) ?? scenarioFrom(name, locateNowhere(name, scenario))
  known.set(hash, one)
  return one
}

const NOTHING = { digest: '', player: '', entry: '', block: '', code: '', begun: '', ended: '', throws: 0, thrown: [] }

const refused = (file: string, reasons: readonly string[]): CheckedEntry => ({
  file,
  status: 'refused',
  reasons,
  marks: [],
  ...NOTHING,
  figures: null,
})

function sentencesOf(fault: unknown): readonly string[] {
  if (fault instanceof ScenarioError) return fault.sentences
  throw fault
}

function told(record: BlockRecord): typeof NOTHING & { thrown: string[] } {
  const { player = '', block, contest, origin, decisions } = record
  return {
    digest: recordDigest(record),
    player,
    entry: contest?.entry ?? '',
    block: block ?? '',
    code: contest === undefined ? '' : keyCode(contest.key),
    begun: origin.begun ?? '',
    ended: origin.ended ?? '',
    throws: decisions.length,
    thrown: decisions.map(({ by: _by, ...thrown }) => canonicalText(thrown)) as never[],
  }
}

/** What makes an entry unbelievable, each with its field. */
function faultsOf(path: string, record: BlockRecord, opened: OpenedPack): string[] {
  const { contest, origin, scenario, model, carryTable, seed, block } = record
  const { pack, digest } = opened
  const at = (field: string, words: string): string => `${path} ${field}: ${words}.`
  if (record.version === 1) return [at('version', 'found 1, and a record of a contest has 2')]
  if (contest === undefined) return [at('contest', 'missing: it was not played in a contest')]
  const starts = contest.starts.map((one) => one.at)
  const times = [pack.sealedAt, ...starts, ...(origin.ended === null ? [] : [origin.ended])]
  const checks: readonly (readonly [boolean, string, string])[] = [
    [contest.pack === digest, 'contest > pack', 'it is an entry of another contest'],
    [contest.title === pack.rules.title, 'contest > title', "it is not this contest's"],
    [contest.deadline === pack.rules.deadline, 'contest > deadline', "it is not this contest's"],
    [isEntrySigned(record), 'contest > signature', 'it is not signed by the key of its entry'],
    [
      contest.hosted === undefined || isHosted(record, opened),
      'contest > hosted',
      'the host did not vouch for these choices',
    ],
    [seed === opened.seed, 'seed', "it is not this contest's luck"],
    [isEntryScenario(opened, scenario), 'scenario', "it is not this contest's lane, bag or bowler"],
    [record.name === opened.scenario.name, 'name', "it is not this contest's lane"],
    [model === pack.model && model === modelFingerprint(), 'model', `found ${model}; the contest is of ${pack.model}`],
    [
      carryTable === pack.carryTable && carryTable === carryTableHash(),
      'carryTable',
      `found ${carryTable}; the contest is of ${pack.carryTable}`,
    ],
    [record.scenarioHash === scenarioHash(scenario), 'scenarioHash', 'it is not that of the scenario'],
    [block !== null, 'block', 'an entry has a number of its own'],
    [(record.player ?? '') !== '', 'player', 'missing: nobody says whose it is'],
    [origin.begun !== null && origin.ended !== null, 'origin', 'an entry says when it was begun and ended'],
    [isAscending(times), 'contest > starts', 'times are out of order, or before the contest was sealed'],
    [isBetween(origin.begun, starts[0]!, origin.ended), 'origin > begun', 'it is before the start or after the end'],
    [
      contest.starts.every(
        ({ throws }, index, all) =>
          throws <= record.decisions.length && (index === 0 || throws >= all[index - 1]!.throws),
      ),
      'contest > starts',
      'they do not fit the number of throws',
    ],
  ]
  return checks.flatMap(([isFine, field, words]) => (isFine ? [] : [at(field, words)]))
}

const isAscending = (times: readonly string[]): boolean =>
  times.every((time, index) => index === 0 || Date.parse(times[index - 1]!) <= Date.parse(time))

const isBetween = (time: string | null, from: string, to: string | null): boolean =>
  time !== null && to !== null && Date.parse(from) <= Date.parse(time) && Date.parse(time) <= Date.parse(to)

function isHosted({ contest, decisions }: BlockRecord, { pack }: OpenedPack): boolean {
  if (contest?.hosted === undefined) return true
  const { chain, signature } = contest.hosted
  return isSignedBy(hostedPart(pack, contest, decisions, chain), signature, pack.organiser)
}

/** What keeps a believable block out of the ranks. */
function outOfContest({ origin, decisions }: BlockRecord, { pack }: OpenedPack): string[] {
  const strangers = decisions.filter(({ by }) => by !== 'player').length
  return [
    ...(origin.cameToBe === 'contest' ? [] : [`it says that it is ${wayWords(origin.cameToBe)} and not an entry`]),
    ...(strangers === 0 ? [] : [`${strangers} of its choices were not made by the player`]),
    ...(origin.copyOf === null ? [] : ["it is gone on from somebody else's block"]),
    ...(origin.ended !== null && Date.parse(origin.ended) > Date.parse(pack.rules.deadline)
      ? [`its last ball was thrown at ${momentWords(origin.ended)}, after the deadline`]
      : []),
  ]
}

const wayWords = (way: BlockRecord['origin']['cameToBe']): string =>
  ({
    played: 'played outside',
    drill: 'a drill',
    'short-block': 'a short block after practice',
    auto: 'played by a policy',
    unknown: 'of unknown origin',
    contest: '',
  })[way]

function marksOf({ contest, origin }: BlockRecord, { pack }: OpenedPack): string[] {
  const starts = contest?.starts ?? []
  const again = starts.slice(1)
  const resumed = again.filter(({ throws }) => throws > 0)
  const restarted = again.filter(({ throws }) => throws === 0).length
  return [
    ...resumed.map(({ at, throws }) => `resumed after ${throws} throws at ${momentWords(at)}`),
    ...(restarted > 0 ? [`begun ${restarted + 1} times`] : []),
    ...((origin.openedBefore ?? 0) > 0
      ? [`the lane was opened ${origin.openedBefore} times before on that machine`]
      : []),
    ...(pack.rules.opens !== undefined && Date.parse(starts[0]?.at ?? '') < Date.parse(pack.rules.opens)
      ? ['begun before the contest opened']
      : []),
    ...(contest?.hosted ? ['hosted'] : []),
  ]
}
