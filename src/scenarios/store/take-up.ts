import { existsSync } from 'node:fs'
import { copyFile, mkdir, rename } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { BlockState, ThrowRecord } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { withBallsTaken } from '../files/scenario/take-balls.js'
import { WriteError } from '../files/text/atomic-write.js'
import { loadScenario } from '../library/load.js'
import { saidWithRecord } from './data-folder.js'
import { type Journal, journalsFolder, openJournal, saidBeside } from './journal.js'
import { latestLeft, leftBlocks, stateLeft, takeUpLeft, takeUpRecord } from './left-blocks.js'

/** A block about to be played and the journal it is kept in. */
export interface BlockKeeping {
  readonly scenario: Scenario
  readonly begun: BlockState
  /** Who plays; undefined where nobody has said. */
  readonly player: string | undefined
  /** Puts a throw on the disk. @throws WriteError */
  readonly keep: (thrown: ThrowRecord) => Promise<void>
  /** The block is kept as a record: its journal goes, and what was said of it on the screen goes with the record. */
  readonly done: (recordPath: string) => Promise<void>
  /** The block is left as it stands: its journal stays. */
  readonly leave: () => Promise<void>
}

type BlockOfPlayer = Pick<BlockKeeping, 'scenario' | 'begun' | 'player'>

/** A new block; its journal begins with the first throw. @throws ScenarioError */
export async function freshBlock(
  name: string,
  seed: string,
  data: string,
  player: string | undefined,
  take?: readonly string[],
): Promise<BlockKeeping> {
  const scenario = withBallsTaken(await loadScenario(name), take)
  return keptBlock({ scenario, begun: beginScenario(scenario, seed), player }, data, null)
}

/**
 * A block that was left: the last of those whose program died, or the one of an unfinished record.
 *
 * @param from true for the former, a path for the latter
 * @param player who goes on with it where it was left by somebody who did not say
 * @throws ScenarioError
 */
export async function resumedBlock(
  from: string | true,
  data: string,
  player: string | undefined,
): Promise<BlockKeeping> {
  if (from === true) {
    const { journal, ...left } = await takeUpLeft(await latestLeft(data))
    const block = { scenario: left.scenario, begun: stateLeft(left), player: left.player ?? player }
    return keptBlock(block, data, left.saidPath, Promise.resolve(journal))
  }
  const left = await takeUpRecord(from)
  const block = { scenario: left.scenario, begun: stateLeft(left), player: left.player ?? player }
  return keptBlock(block, data, left.saidPath)
}

/** What can be gone on with, one sentence a block; nothing where nothing was left. Files that cannot be read are named and left. */
export async function offerOf(data: string): Promise<string[]> {
  const { blocks, refused } = await leftBlocks(data)
  return [
    ...blocks.map(({ record: { name, decisions } }, place) =>
      place === 0
        ? `A block on ${name} was left after ${decisions.length} throws. To go on with it: dryboard play --resume`
        : `An earlier one on ${name} was left after ${decisions.length} throws; it comes next once the later ones are finished or stopped.`,
    ),
    ...refused.flatMap(({ sentences }) => sentences),
  ]
}

/**
 * @param saidPath where what was said of it so far lies, if anything was
 * @param open its journal where it has one; else one begins with the first throw to come
 */
function keptBlock(block: BlockOfPlayer, data: string, saidPath: string | null, open?: Promise<Journal>): BlockKeeping {
  let journal = open
  const opened = (): Promise<Journal> => {
    journal ??= beginJournal(block, data, saidPath)
    return journal
  }
  return {
    ...block,
    keep: async (thrown) => (await opened()).append(thrown),
    done: async (recordPath) => {
      if (journal) await finish(await journal, saidWithRecord(data, recordPath))
      else if (saidPath !== null) await copySaid(saidPath, saidWithRecord(data, recordPath))
      journal = undefined
    },
    leave: async () => {
      if (journal) await (await journal).close()
    },
  }
}

async function beginJournal(
  { scenario, begun, player }: BlockOfPlayer,
  data: string,
  saidPath: string | null,
): Promise<Journal> {
  const journal = await openJournal(journalsFolder(data), scenario, begun, player)
  if (saidPath !== null) await copySaid(saidPath, saidBeside(journal.path))
  return journal
}

/** @throws WriteError */
async function copySaid(from: string, to: string): Promise<void> {
  if (!existsSync(from)) return
  try {
    await mkdir(dirname(to), { recursive: true })
    await copyFile(from, to)
  } catch (cause) {
    throw new WriteError(to, cause)
  }
}

async function finish(journal: Journal, saidPath: string): Promise<void> {
  if (existsSync(saidBeside(journal.path))) {
    await mkdir(dirname(saidPath), { recursive: true })
    await rename(saidBeside(journal.path), saidPath)
  }
  await journal.remove()
}
