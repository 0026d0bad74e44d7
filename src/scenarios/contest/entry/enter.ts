import { randomBytes } from 'node:crypto'
import type { BlockState } from '../../../sim/world/block/types.js'
import { beginScenario } from '../../files/scenario/begin-scenario.js'
import type { ContestRules } from '../../files/schema/contest-rules.js'
import { localTime } from '../../files/text/local-time.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import type { BlockStore } from '../../store/block-store.js'
import type { ContestSection } from '../../store/contest-section.js'
import { recordsFolder } from '../../store/data-folder.js'
import { entryKey } from '../../store/entry-key.js'
import type { OpenBlock } from '../../store/open-block.js'
import { recordsAmong } from '../../store/records-among.js'
import { type KnownContest, knownContests, noteContest, oilNames } from '../../store/sealed-lanes.js'
import { keyCode } from '../../store/signing.js'
import { checkModel, type OpenedPack } from '../pack/pack.js'
import { type BowlerChoice, entryScenario } from './entry-scenario.js'

interface Entering {
  /** For sentences. */
  readonly path: string
  readonly opened: OpenedPack
  readonly player: string | undefined
  readonly bowler: BowlerChoice
  readonly store: BlockStore
  readonly data: string
  readonly now: Date
  /** Whether many play here at once, each a block of their own. */
  readonly isHost?: boolean
}

export interface Entered {
  readonly open: OpenBlock
  /** The block before each throw that is kept, and last as it stands. */
  readonly states: readonly BlockState[]
  readonly rules: ContestRules
  /** What the entrant tells the organiser, so that nobody else can hand in for them. */
  readonly code: string
  /** Whether it goes on with an entry that was left. */
  readonly isResumed: boolean
}

type Sitting = KnownContest['entries'][number]

/** What this machine knows of a contest, as far as it does. */
function knownHere(data: string, { pack, digest, scenario }: OpenedPack): KnownContest {
  const { title, deadline } = pack.rules
  const fresh = { pack: digest, title, deadline, unsealed: false, oils: oilNames(scenario.data), entries: [] }
  return knownContests(data).find((known) => known.pack === digest) ?? fresh
}

/** Notes on this machine that a contest is on, so that nothing tells of its lane. @throws WriteError */
export async function rememberContest(data: string, opened: OpenedPack): Promise<void> {
  await noteContest(data, knownHere(data, opened))
}

/** Keeps each time somebody sits down. @throws WriteError */
async function noteSitting(data: string, opened: OpenedPack, sitting: Sitting): Promise<void> {
  const known = knownHere(data, opened)
  const others = known.entries.filter(({ entry }) => entry !== sitting.entry)
  await noteContest(data, { ...known, entries: [...others, sitting] })
}

/**
 * Sits an entrant down to a contest: goes on with the entry they left, or begins one. All entries have the same lane and luck.
 *
 * @throws ScenarioError where the rules, the clock or the program do not allow it; WriteError
 */
export async function enter({
  path,
  opened,
  player,
  bowler,
  store,
  data,
  now,
  isHost = false,
}: Entering): Promise<Entered> {
  const { pack, digest, seed } = opened
  const { title, opens, deadline } = pack.rules
  if (player === undefined) throw new ScenarioError([`${path}: a contest needs to know who plays; say --player NAME.`])
  if (opens !== undefined && now.getTime() < Date.parse(opens))
    throw new ScenarioError([`${path}: "${title}" opens at ${opens}.`])
  if (now.getTime() >= Date.parse(deadline)) throw new ScenarioError([`${path}: "${title}" was over at ${deadline}.`])
  checkModel(path, pack)
  const { blocks, played } = await store.left()
  const at = localTime(now)
  const mine = knownHere(data, opened).entries.filter((one) => isSame(one.player, player))
  const left = blocks.find(({ record }) => record.contest?.pack === digest && isSame(record.player, player))
  if (left) {
    const { open, states } = await store.takeUp(left, player)
    const { entry, starts, key } = open.contest!
    await noteSitting(data, opened, { player, entry, starts })
    return { open, states, rules: pack.rules, code: keyCode(key), isResumed: true }
  }
  // Two programs at once would be two tries.
  if (played.length > 0 && !isHost)
    throw new ScenarioError([`${path}: ${played.join(', ')} is just being played here; finish or leave it first.`])
  const filed = await filedEntries(data)
  const open = mine.find(({ entry }) => !filed.has(entry))
  if (!open && mine.length >= pack.rules.tries)
    throw new ScenarioError([
      `${path}: ${player} has begun ${mine.length} of ${pack.rules.tries} here; the rules of "${title}" allow no more.`,
    ])
  // One that was begun and is gone, or of which no ball was kept, is begun again and says so.
  const entry = open?.entry ?? randomBytes(12).toString('hex')
  const key = await entryKey(data, entry)
  const starts = [...(open?.starts ?? []), { at, throws: 0 }]
  await noteSitting(data, opened, { player, entry, starts })
  const contest: ContestSection = { pack: digest, title, deadline, entry, starts, key: key.publicText }
  const scenario = entryScenario(opened, bowler)
  const begun = beginScenario(scenario, seed)
  const block = store.begin({ scenario, begun, player, cameToBe: 'contest', contest })
  return { open: block, states: [begun], rules: pack.rules, code: keyCode(key.publicText), isResumed: false }
}

/** Entries whose record is filed here. */
async function filedEntries(data: string): Promise<Set<string>> {
  const paths = await recordsAmong([recordsFolder(data)]).catch(() => [])
  const filed = new Set<string>()
  for (const path of paths) {
    try {
      const { contest } = JSON.parse(await readTextFile(path)) as { readonly contest?: { readonly entry?: unknown } }
      if (typeof contest?.entry === 'string') filed.add(contest.entry)
    } catch {
      // What cannot be read is no entry's record.
    }
  }
  return filed
}

const isSame = (one: string | undefined, other: string): boolean =>
  one?.trim().toLowerCase() === other.trim().toLowerCase()
