import { existsSync } from 'node:fs'
import { mkdir, rename } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { BlockState, ThrowRecord } from '../sim/block/types.js'
import { beginScenario } from './begin-scenario.js'
import { saidFolder } from './data-folder.js'
import {
  type Journal,
  journalsFolder,
  leftJournals,
  openJournal,
  readJournal,
  saidBeside,
  takeUpJournal,
} from './journal.js'
import { loadScenario } from './load.js'
import { readRecord } from './record.js'
import { type Replay, replayRecord } from './replay.js'
import type { Scenario } from './scenario.js'
import { ScenarioError } from './scenario-error.js'
import { withBallsTaken } from './take-balls.js'

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

/** A new block; its journal begins with the first throw. @throws ScenarioError */
export async function freshBlock(
  name: string,
  seed: string,
  data: string,
  player: string | undefined,
  take?: readonly string[],
): Promise<BlockKeeping> {
  const scenario = withBallsTaken(await loadScenario(name), take)
  return keptBlock({ scenario, begun: beginScenario(scenario, seed), player }, async () =>
    openJournal(journalsFolder(data), scenario, seed, player),
  )
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
  const folder = journalsFolder(data)
  if (from !== true) {
    const record = await readRecord(from)
    const replay = replayRecord(record, from)
    const begun = stillOpen(replay, from)
    const who = record.player ?? player
    return keptBlock({ scenario: replay.scenario, begun, player: who }, async () => {
      const journal = await openJournal(folder, replay.scenario, begun.seed, who)
      for (const thrown of begun.throws) await journal.append(thrown)
      return journal
    })
  }
  const path = (await leftJournals(folder)).at(-1)
  if (path === undefined) throw new ScenarioError([`${folder}: no block was left unfinished here.`], true)
  const record = await readJournal(path)
  const { scenario, states } = replayRecord(record, path)
  const { journal } = await takeUpJournal(path)
  const block = { scenario, begun: states[states.length - 1], player: record.player ?? player }
  return keptBlock(block, async () => journal, Promise.resolve(journal))
}

/** What can be gone on with, one sentence a block; nothing where nothing was left. Files that cannot be read are named and left. */
export async function offerOf(data: string): Promise<string[]> {
  const sentences: string[] = []
  for (const path of await leftJournals(journalsFolder(data))) {
    try {
      const { name, decisions } = await readJournal(path)
      sentences.push(
        `A block on ${name} was left after ${decisions.length} throws. To go on with it: dryboard play --resume`,
      )
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
      sentences.push(...fault.sentences)
    }
  }
  return sentences
}

function stillOpen({ states }: Replay, name: string): BlockState {
  const state = states[states.length - 1]
  if (!state.spot) throw new ScenarioError([`${name}: the block is finished; there is nothing to go on with.`])
  return state
}

function keptBlock(
  block: Pick<BlockKeeping, 'scenario' | 'begun' | 'player'>,
  begin: () => Promise<Journal>,
  open?: Promise<Journal>,
): BlockKeeping {
  let journal = open
  const opened = (): Promise<Journal> => {
    journal ??= begin()
    return journal
  }
  return {
    ...block,
    keep: async (thrown) => (await opened()).append(thrown),
    done: async (recordPath) => {
      if (journal) await finish(await journal, recordPath)
      journal = undefined
    },
    leave: async () => {
      if (journal) await (await journal).close()
    },
  }
}

async function finish(journal: Journal, recordPath: string): Promise<void> {
  const said = join(saidFolder(dirname(dirname(journal.path))), basename(recordPath))
  if (existsSync(saidBeside(journal.path))) {
    await mkdir(dirname(said), { recursive: true })
    await rename(saidBeside(journal.path), said)
  }
  await journal.remove()
}
