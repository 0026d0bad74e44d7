import { stat } from 'node:fs/promises'
import {
  type Journal,
  journalsFolder,
  leftJournals,
  openJournal,
  readJournal,
  saidBeside,
  takeUpJournal,
} from '../scenarios/journal.js'
import { replaceFile } from '../scenarios/replace-file.js'
import { replayRecord } from '../scenarios/replay.js'
import type { Scenario } from '../scenarios/scenario.js'
import { ScenarioError } from '../scenarios/scenario-error.js'
import type { BlockState } from '../sim/block/types.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './notes.js'
import type { KeptBlock, LeftBlocks } from './services.js'
import { textAt } from './text-at.js'

/** Blocks while they are played, each in a journal as plain play keeps it, so that either can go on with the other's. */
export interface UnfinishedBlocks {
  /**
   * Puts the throw that leads from one state to the next on the disk. The journal begins with the first throw; one that
   * could not be written to is made anew with all throws so far.
   *
   * @throws WriteError
   */
  keepThrow(scenario: Scenario, before: BlockState, after: BlockState): Promise<void>
  /** Keeps what the player said of a block beside its journal. */
  keepSaid(block: BlockState, notes: BlockNotes): Promise<void>
  left(): Promise<LeftBlocks>
  /** The block is kept as a record: its journal goes. */
  done(block: BlockState): Promise<void>
  /** Lets go of all journals; what is in them stays for next time. */
  leave(): Promise<void>
}

/** Journals of a data folder, each found by the state of its block after the last throw in it; new ones are of `player`. */
export function unfinishedBlocks(data: string, player?: string): UnfinishedBlocks {
  const folder = journalsFolder(data)
  const journals = new Map<BlockState, Journal>()
  const broken = new WeakSet<Journal>()

  const appendLast = async (journal: Journal, block: BlockState): Promise<void> => {
    try {
      await journal.append(block.throws.at(-1)!)
    } catch (fault) {
      broken.add(journal)
      await journal.close().catch(() => {})
      throw fault
    }
  }
  const writeAnew = async (scenario: Scenario, block: BlockState): Promise<Journal> => {
    const journal = await openJournal(folder, scenario, block.seed, player)
    try {
      for (const thrown of block.throws) await journal.append(thrown)
      return journal
    } catch (fault) {
      await journal.remove().catch(() => {})
      throw fault
    }
  }

  return {
    async keepThrow(scenario, before, after) {
      const journal = journals.get(before)
      journals.delete(before)
      if (journal) journals.set(after, journal)
      if (journal && !broken.has(journal)) return appendLast(journal, after)
      journals.set(after, await writeAnew(scenario, after))
      await journal?.remove()
    },
    async keepSaid(block, notes) {
      const journal = journals.get(block)
      if (journal) await replaceFile(saidBeside(journal.path), notesText(notes))
    },
    async left() {
      const blocks: { kept: KeptBlock; when: number }[] = []
      const problems: string[] = []
      for (const path of await leftJournals(folder)) {
        try {
          const when = (await stat(path)).mtimeMs
          blocks.push({ kept: await glanceAt(path, journals), when })
        } catch (fault) {
          if (!(fault instanceof ScenarioError)) throw fault
          problems.push(...fault.sentences)
        }
      }
      return { blocks: blocks.sort((a, b) => b.when - a.when).map(({ kept }) => kept), problems }
    },
    async done(block) {
      await journals.get(block)?.remove()
      journals.delete(block)
    },
    async leave() {
      await Promise.all([...journals.values()].map((journal) => journal.close()))
      journals.clear()
    },
  }
}

async function glanceAt(path: string, journals: Map<BlockState, Journal>): Promise<KeptBlock> {
  const { scenario, decisions } = await readJournal(path)
  return {
    title: scenario.title,
    throws: decisions.length,
    async takeUp() {
      // Played again before it is claimed: what does not come out the same stays as it was left.
      const { scenario, states } = replayRecord(await readJournal(path), path)
      const said = await textAt(saidBeside(path))
      const { journal } = await takeUpJournal(path)
      journals.set(states.at(-1)!, journal)
      return { scenario, states, notes: (said === null ? null : readNotes(said)) ?? noNotes('block'), recordPath: null }
    },
  }
}
