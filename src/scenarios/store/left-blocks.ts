import type { BlockState } from '../../sim/world/block/types.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { saidOfRecord } from './data-folder.js'
import { type Journal, journalsFolder, leftJournals, readJournal, saidBeside, takeUpJournal } from './journal.js'
import { type BlockRecord, readRecord } from './record.js'
import { type Replay, replayRecord } from './replay.js'

/** A block whose program ended before it did, told without playing it again. */
export interface LeftBlock {
  readonly journalPath: string
  /** The record it would be as it was left. */
  readonly record: BlockRecord
}

export interface LeftBlocks {
  /** The latest first. */
  readonly blocks: readonly LeftBlock[]
  /** Why others cannot be gone on with, the latest first; they are left as they are. */
  readonly refused: readonly ScenarioError[]
}

/** A block played again up to where it was left. */
export interface TakenUpBlock extends Replay {
  /** Who began it, if that was said. */
  readonly player: string | undefined
  /** Where what the player said of it on the screen lies, if anything was said; null where nothing can have been. */
  readonly saidPath: string | null
}

/** Blocks of a data folder that no running program plays. */
export async function leftBlocks(data: string): Promise<LeftBlocks> {
  const blocks: LeftBlock[] = []
  const refused: ScenarioError[] = []
  for (const journalPath of await leftJournals(journalsFolder(data))) {
    try {
      blocks.push({ journalPath, record: await readJournal(journalPath) })
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
      refused.push(fault)
    }
  }
  return { blocks, refused }
}

/**
 * The journal of the block left last, of those that can be read.
 *
 * @throws ScenarioError where there is none
 */
export async function latestLeft(data: string): Promise<string> {
  const { blocks, refused } = await leftBlocks(data)
  const [latest] = blocks
  if (latest) return latest.journalPath
  throw refused[0] ?? new ScenarioError([`${journalsFolder(data)}: no block was left unfinished here.`], true)
}

/**
 * Plays a block that was left again, and claims its journal for this process.
 *
 * @throws ScenarioError where it does not come out the same, WriteError where the journal cannot be claimed
 */
export async function takeUpLeft(journalPath: string): Promise<TakenUpBlock & { readonly journal: Journal }> {
  // Played again before it is claimed: what does not come out the same stays as it was left.
  const record = await readJournal(journalPath)
  const replay = replayRecord(record, journalPath)
  const journal = await takeUpJournal(journalPath)
  return { ...replay, player: record.player, saidPath: saidBeside(journal.path), journal }
}

/**
 * Plays the block of an unfinished record again; it has no journal until it goes on.
 *
 * @throws ScenarioError
 */
export async function takeUpRecord(path: string): Promise<TakenUpBlock> {
  const record = await readRecord(path)
  const replay = replayRecord(record, path)
  if (!stateLeft(replay).spot)
    throw new ScenarioError([`${path}: the block is finished; there is nothing to go on with.`])
  return { ...replay, player: record.player, saidPath: saidOfRecord(path) }
}

/** Where a block was left. */
export const stateLeft = ({ states }: Replay): BlockState => states[states.length - 1]
