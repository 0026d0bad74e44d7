import { randomBytes } from 'node:crypto'
import { realpath } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { WriteError, writeSynced } from '../files/text/atomic-write.js'
import { draftName, sweepOnce } from '../files/text/drafts.js'
import { type FileLayer, NODE_FILES } from '../files/text/file-layer.js'
import { localTime } from '../files/text/local-time.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { isBlockOver } from './block-over.js'
import type { ContestSection } from './contest-section.js'
import { recordsFolder, saidOfRecord, saidWithRecord } from './data-folder.js'
import { takeOverJournal } from './journal-file.js'
import { journalsFolder, namedBy, saidPath } from './journal-names.js'
import { journalFromText } from './journal-text.js'
import { findLeft, type LeftBlock, type LeftBlocks } from './left-blocks.js'
import { journalHead, type KeptIn, type OpenBlock, openBlock, textAt } from './open-block.js'
import type { CameToBe, MadeBy } from './origin.js'
import { hasPastBlocks, listPastBlocks, type PastBlock } from './past-blocks.js'
import { type BlockRecord, readRecord, recordOf } from './record.js'
import { recordSchema } from './record-schema.js'
import { type Replay, replayRecord } from './replay.js'

/** A new block, and how it comes to be. */
interface BlockToBegin {
  readonly scenario: Scenario
  /** Before the first throw, or after those that are given. */
  readonly begun: BlockState
  readonly player: string | undefined
  readonly cameToBe: CameToBe
  /** Who made the throws before; they are given where it is left out. */
  readonly before?: MadeBy
  readonly contest?: ContestSection
}

/** A block played again up to where it was left, and in play from there. */
export interface ResumedBlock extends Replay {
  readonly open: OpenBlock
  /** Why later ones were passed over, one sentence each. */
  readonly passedOver: readonly string[]
}

/**
 * The one place where blocks are kept: begun, put on the disk throw by throw, listed, locked, taken up, filed and discarded. Screen
 * and plain play both use it, so that either goes on with the other's.
 */
export interface BlockStore {
  /** Tries whether blocks can be kept at all, before one is played for nothing. @throws WriteError */
  tryOut(): Promise<void>
  /** @throws ScenarioError where its record could not be read again */
  begin(block: BlockToBegin): OpenBlock
  left(): Promise<LeftBlocks>
  /** Takes up a block that was left. @throws ScenarioError, WriteError */
  takeUp(left: LeftBlock, player: string | undefined): Promise<ResumedBlock>
  /**
   * Goes on with a block: the one left last of those that can be gone on with (true), one that was left (its name or its journal's
   * path), or the one of an unfinished record (its path).
   *
   * @param player who goes on with it now
   * @throws ScenarioError, WriteError
   */
  resume(from: string | true, player: string | undefined): Promise<ResumedBlock>
  hasPast(): Promise<boolean>
  listPast(player?: string): Promise<PastBlock[]>
}

export interface StoreParts {
  readonly files?: FileLayer
  readonly now?: () => Date
  /** A new block's own number. */
  readonly freshBlock?: () => string
}

export function blockStore(data: string, parts: StoreParts = {}): BlockStore {
  const { files = NODE_FILES, now = () => new Date(), freshBlock = () => randomBytes(12).toString('hex') } = parts
  const records = recordsFolder(data)
  const journals = journalsFolder(data)
  const kept: KeptIn = { data, journals, records, saidWith: (path) => saidWithRecord(data, path), files, now }

  const takeUp: BlockStore['takeUp'] = async ({ at, journalPath }, player) => {
    // Played again before it is claimed: what does not come out the same stays as it was left.
    const read = async (path: string) => journalFromText(path, await readTextFile(path)).record
    let record = await read(journalPath)
    let replay = replayRecord(record, journalPath)
    const block = record.block ?? freshBlock()
    const who = record.player ?? player
    let contest: ContestSection | undefined
    const journal = await takeOverJournal(
      at,
      async (path) => {
        const last = await read(path)
        // Whoever played it until now had one more throw on the disk than when it was first read.
        if (last.decisions.length !== record.decisions.length) replay = replayRecord(last, path)
        record = last
        const { ended: _open, ...beginning } = record.origin
        contest = startedAgain(record, localTime(now()))
        const about = { scenario: replay.scenario, begun: stateLeft(replay), block, player: who, contest }
        return { head: journalHead(about, beginning), lines: record.decisions }
      },
      files,
    )
    const said = await textAt(saidPath(journal.at), files)
    const open = openBlock(
      { ...opening(record, replay), block, player: who, contest, said, journal, filedAs: null },
      kept,
    )
    return { ...replay, open, passedOver: [] }
  }

  const takeUpRecord = async (path: string, player: string | undefined): Promise<ResumedBlock> => {
    const record = await readRecord(path)
    if (record.contest !== undefined)
      throw new ScenarioError([`${path}: it was handed in to a contest; it stays as it is.`])
    const replay = replayRecord(record, path)
    if (isBlockOver(record.origin.cameToBe, stateLeft(replay)))
      throw new ScenarioError([`${path}: the block is finished; there is nothing to go on with.`])
    const isOwn = isSamePlayer(record.player, player) ?? (await isIn(path, records))
    const saidOf = isOwn ? saidOfRecord(path) : null
    const said = saidOf === null ? null : await textAt(saidOf, files)
    const own = { block: record.block ?? freshBlock(), player: record.player ?? player, filedAs: path }
    const copy = { block: freshBlock(), player, filedAs: null, ...givenBy(record, localTime(now())) }
    const open = openBlock({ ...opening(record, replay), said, journal: null, ...(isOwn ? own : copy) }, kept)
    return { ...replay, open, passedOver: [] }
  }

  return {
    takeUp,
    async tryOut() {
      for (const folder of [journals, records]) {
        try {
          await files.mkdir(folder, { recursive: true })
          const [first, second] = [join(folder, draftName('trial')), join(folder, draftName('trial'))]
          await writeSynced(first, 'A file to see whether blocks can be kept here.\n', files)
          await files.rename(first, second)
          await files.unlink(second)
        } catch (cause) {
          throw new WriteError(folder, cause)
        }
      }
      await sweepOnce(records, files)
      await sweepOnce(join(data, 'notes'), files)
    },
    begin({ scenario, begun, player, cameToBe, before = 'given', contest }) {
      checkReadable(scenario, begun, player)
      const beginning = { cameToBe, begun: localTime(now()), copyOf: null }
      const madeBy = begun.throws.map(() => before)
      const none = { openedBefore: null, said: null, journal: null, filedAs: null }
      return openBlock({ scenario, begun, player, contest, block: freshBlock(), beginning, madeBy, ...none }, kept)
    },
    left: () => findLeft(kept, files),
    async resume(from, player) {
      const { blocks, refused, played } = await findLeft(kept, files)
      if (from === true) {
        const passedOver: string[] = []
        for (const left of blocks) {
          try {
            return { ...(await takeUp(left, player)), passedOver }
          } catch (fault) {
            if (!(fault instanceof ScenarioError)) throw fault
            passedOver.push(...fault.sentences)
          }
        }
        const sentences = [...passedOver, ...refused.flatMap(({ fault }) => fault.sentences)]
        if (sentences.length > 0) throw new ScenarioError(sentences)
        const others = played.length > 0 ? `; somebody plays ${played.join(', ')} just now` : ''
        throw new ScenarioError([`${journals}: no block was left unfinished here${others}.`], true)
      }
      const name = namedBy(from)?.name ?? from
      const left = blocks.find((one) => one.name === name)
      if (left) return takeUp(left, player)
      const bad = refused.find((one) => one.name === name)
      if (bad) throw bad.fault
      if (played.includes(name)) throw new ScenarioError([`${name}: somebody plays this block just now.`])
      return takeUpRecord(from, player)
    },
    hasPast: () => hasPastBlocks(records, files),
    listPast: (player) => listPastBlocks(records, { player, files }),
  }
}

/** An entry's section once somebody sits down to it again. */
const startedAgain = ({ contest, decisions }: BlockRecord, at: string): ContestSection | undefined =>
  contest && { ...contest, starts: [...contest.starts, { at, throws: decisions.length }] }

/** Where a block was left. */
const stateLeft = ({ states }: Replay): BlockState => states[states.length - 1]!

/** What of a block that is gone on with comes from its file. */
function opening({ origin, decisions }: BlockRecord, replay: Replay) {
  const { ended: _ended, openedBefore, ...beginning } = origin
  const madeBy = decisions.map(({ by }) => by)
  return { scenario: replay.scenario, begun: stateLeft(replay), beginning, openedBefore, madeBy }
}

/** A copy of somebody's block is a block of its own, and what was thrown in it before is given. */
function givenBy({ block, decisions }: BlockRecord, begun: string) {
  const beginning = { cameToBe: 'played' as const, begun, copyOf: block }
  return { beginning, openedBefore: null, madeBy: decisions.map((): MadeBy => 'given') }
}

/** Null where one of the two has not said. */
function isSamePlayer(one: string | undefined, other: string | undefined): boolean | null {
  if (one === undefined || other === undefined) return null
  const plain = (name: string): string => name.trim().toLowerCase()
  return plain(one) === plain(other)
}

async function isIn(path: string, folder: string): Promise<boolean> {
  const real = async (one: string): Promise<string> => realpath(one).catch(() => resolve(one))
  return (await real(dirname(path))) === (await real(folder))
}

/** Holds the record a block will be against what a record may be, so that none is played that cannot be opened again. */
function checkReadable(scenario: Scenario, begun: BlockState, player: string | undefined): void {
  const record = recordOf(scenario, begun, player === undefined ? {} : { player })
  const checked = recordSchema.safeParse({ ...record, digest: 'yet to come' })
  if (checked.success) return
  throw new ScenarioError(problemSentences(locateNowhere(scenario.name, record), checked.error.issues))
}
