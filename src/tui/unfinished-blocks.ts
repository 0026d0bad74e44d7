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
import { readRecord } from '../scenarios/record.js'
import { replaceFile } from '../scenarios/replace-file.js'
import { replayRecord } from '../scenarios/replay.js'
import type { Scenario } from '../scenarios/scenario.js'
import { ScenarioError } from '../scenarios/scenario-error.js'
import type { BlockState } from '../sim/block/types.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './notes.js'
import type { KeptBlock, LeftBlocks, PlayedBlock } from './services.js'
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
  /**
   * The block left last, or the one of an unfinished record, played again and taken up.
   *
   * @param from true for the former, a path for the latter
   * @throws ScenarioError
   */
  resume(from: string | true): Promise<PlayedBlock>
  /** Who plays a block, if that was said. */
  playerOf(block: BlockState): string | undefined
  /** The block is kept as a record: its journal goes. */
  done(block: BlockState): Promise<void>
  /** Lets go of all journals; what is in them stays for next time. */
  leave(): Promise<void>
}

/** The journal that ends in a state of a block. */
interface Kept {
  /** Null while nothing of a block taken up from a record has been thrown. */
  readonly journal: Journal | null
  /** Whether the latest throw could not be written to it. */
  readonly isBroken: boolean
  /** Who plays, if that was said. */
  readonly player: string | undefined
}

/** Journals of a data folder, each found by the state of its block after the last throw in it; new ones are of `player`. */
export function unfinishedBlocks(data: string, player?: string): UnfinishedBlocks {
  const folder = journalsFolder(data)
  const kept = new Map<BlockState, Kept>()

  const writeAnew = async (scenario: Scenario, block: BlockState, who: string | undefined): Promise<Journal> => {
    const journal = await openJournal(folder, scenario, block.seed, who)
    try {
      for (const thrown of block.throws) await journal.append(thrown)
      return journal
    } catch (fault) {
      await journal.remove().catch(() => {})
      throw fault
    }
  }

  const glanceAt = async (path: string): Promise<KeptBlock> => {
    const { scenario, decisions } = await readJournal(path)
    return { title: scenario.title, throws: decisions.length, takeUp: () => takeUp(path) }
  }
  const takeUp = async (path: string): Promise<PlayedBlock> => {
    // Played again before it is claimed: what does not come out the same stays as it was left.
    const record = await readJournal(path)
    const { scenario, states } = replayRecord(record, path)
    const said = await textAt(saidBeside(path))
    const { journal } = await takeUpJournal(path)
    kept.set(states.at(-1)!, { journal, isBroken: false, player: record.player ?? player })
    return { scenario, states, notes: (said === null ? null : readNotes(said)) ?? noNotes('block'), recordPath: null }
  }

  return {
    async keepThrow(scenario, before, after) {
      const { journal, isBroken, player: who } = kept.get(before) ?? { journal: null, isBroken: false, player }
      kept.delete(before)
      if (journal && !isBroken) {
        kept.set(after, { journal, isBroken, player: who })
        try {
          return await journal.append(after.throws.at(-1)!)
        } catch (fault) {
          kept.set(after, { journal, isBroken: true, player: who })
          await journal.close().catch(() => {})
          throw fault
        }
      }
      kept.set(after, { journal, isBroken, player: who })
      kept.set(after, { journal: await writeAnew(scenario, after, who), isBroken: false, player: who })
      await journal?.remove()
    },
    async keepSaid(block, notes) {
      const journal = kept.get(block)?.journal
      if (journal) await replaceFile(saidBeside(journal.path), notesText(notes))
    },
    async left() {
      const blocks: { kept: KeptBlock; when: number }[] = []
      const problems: string[] = []
      for (const path of await leftJournals(folder)) {
        try {
          blocks.push({ when: (await stat(path)).mtimeMs, kept: await glanceAt(path) })
        } catch (fault) {
          if (!(fault instanceof ScenarioError)) throw fault
          problems.push(...fault.sentences)
        }
      }
      return { blocks: blocks.sort((a, b) => b.when - a.when).map((one) => one.kept), problems }
    },
    async resume(from) {
      if (from === true) {
        const [latest] = (await this.left()).blocks
        if (!latest) throw new ScenarioError([`${folder}: no block was left unfinished here.`], true)
        return latest.takeUp()
      }
      const record = await readRecord(from)
      const { scenario, states } = replayRecord(record, from)
      const block = states.at(-1)!
      if (!block.spot) throw new ScenarioError([`${from}: the block is finished; there is nothing to go on with.`])
      kept.set(block, { journal: null, isBroken: false, player: record.player ?? player })
      return { scenario, states, notes: noNotes('block'), recordPath: null }
    },
    playerOf: (block) => kept.get(block)?.player ?? player,
    async done(block) {
      await kept.get(block)?.journal?.remove()
      kept.delete(block)
    },
    async leave() {
      await Promise.all([...kept.values()].map(({ journal }) => journal?.close()))
      kept.clear()
    },
  }
}
