import type { BlockState } from '../../sim/world/block/types.js'
import type { Keeper, PlayedBlock } from '../../tui/state/services.js'
import { noNotes } from './block-notes.js'
import { notesAt, writeNotes } from './block-notes-file.js'
import { type Journal, journalsFolder, openJournal, saidBeside } from './journal.js'
import { latestLeft, leftBlocks, stateLeft, type TakenUpBlock, takeUpLeft, takeUpRecord } from './left-blocks.js'

/** Blocks while they are played, each in a journal as plain play keeps it, so that either can go on with the other's. */
export interface UnfinishedBlocks extends Pick<Keeper, 'leftBlocks' | 'resume' | 'keepThrow' | 'keepSaid' | 'leave'> {
  /** Who plays a block, if that was said. */
  playerOf(block: BlockState): string | undefined
  /** The block is kept as a record: its journal goes. */
  done(block: BlockState): Promise<void>
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

/**
 * Journals of a data folder, each found by the state of its block after the last throw in it; new ones are of `player`. A journal
 * begins with the first throw; one that could not be written to is made anew with all throws so far.
 */
export function unfinishedBlocks(data: string, player?: string): UnfinishedBlocks {
  const folder = journalsFolder(data)
  const kept = new Map<BlockState, Kept>()

  const goOnWith = async (left: TakenUpBlock, journal: Journal | null): Promise<PlayedBlock> => {
    kept.set(stateLeft(left), { journal, isBroken: false, player: left.player ?? player })
    const notes = left.saidPath === null ? noNotes('block') : await notesAt(left.saidPath)
    return { scenario: left.scenario, states: left.states, notes, recordPath: null }
  }

  const takeUp = async (path: string): Promise<PlayedBlock> => {
    const { journal, ...left } = await takeUpLeft(path)
    return goOnWith(left, journal)
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
      kept.set(after, { journal: await openJournal(folder, scenario, after, who), isBroken: false, player: who })
      await journal?.remove()
    },
    async keepSaid(block, notes) {
      const journal = kept.get(block)?.journal
      if (journal) await writeNotes(saidBeside(journal.path), notes)
    },
    async leftBlocks() {
      const { blocks, refused } = await leftBlocks(data)
      return {
        blocks: blocks.map(({ journalPath, record: { scenario, decisions } }) => ({
          title: scenario.title,
          throws: decisions.length,
          takeUp: () => takeUp(journalPath),
        })),
        problems: refused.flatMap(({ sentences }) => sentences),
      }
    },
    async resume(from) {
      if (from === true) return takeUp(await latestLeft(data))
      return goOnWith(await takeUpRecord(from), null)
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
