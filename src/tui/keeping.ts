import { basename, join } from 'node:path'
import { dataFolder, debriefsFolder, recordsFolder, saidFolder } from '../scenarios/data-folder.js'
import { PLAYER_VARIABLE } from '../scenarios/player-name.js'
import { readRecord, recordOf, writeRecord } from '../scenarios/record.js'
import { replaceFile } from '../scenarios/replace-file.js'
import { replayRecord } from '../scenarios/replay.js'
import { type KeptAccount, keepAccount, readKeptAccount } from '../scenarios/review/kept-account.js'
import type { Scenario } from '../scenarios/scenario.js'
import type { BlockState } from '../sim/block/types.js'
import { EMPTY_KIT, kitText, type OwnKit, readKit } from './kit/own-kit.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './notes.js'
import { hasPastBlocks, listPastBlocks, type PastBlock } from './past-blocks.js'
import type { LeftBlocks, PlayedBlock } from './services.js'
import { setAside } from './set-aside.js'
import { textAt } from './text-at.js'
import { unfinishedBlocks } from './unfinished-blocks.js'

export interface Keeper {
  leftBlocks(): Promise<LeftBlocks>
  /** The block left last, or the one of an unfinished record, taken up. @throws ScenarioError */
  resume(from: string | true): Promise<PlayedBlock>
  /** Puts the throw that leads from one state to the next on the disk. @throws WriteError */
  keepThrow(scenario: Scenario, before: BlockState, after: BlockState): Promise<void>
  /** Keeps what the player said of a block that is still played. */
  keepSaid(block: BlockState, notes: BlockNotes): Promise<void>
  /** Files a block that is over or ended, and tells where. */
  file(scenario: Scenario, block: BlockState, notes: BlockNotes): Promise<string>
  /** Replaces the notes beside a filed record. */
  keepNotes(recordPath: string, notes: BlockNotes): Promise<void>
  /** Keeps what was worked out of a block, so that it need not be worked out again. */
  keepWorked(scenario: Scenario, block: BlockState, worked: KeptAccount): Promise<void>
  hasPast(): Promise<boolean>
  listPast(): Promise<PastBlock[]>
  /** @throws ScenarioError */
  openPast(path: string): Promise<PlayedBlock>
  /** The kit, or why there is none though there is a file. */
  findKit(): Promise<{ kit: OwnKit; problem: string }>
  /** Keeps the kit, and returns where a file that could not be read lies now, or null. */
  keepKit(kit: OwnKit): Promise<string | null>
  /** Ends the keeping; blocks left unfinished stay for next time. */
  leave(): Promise<void>
}

/**
 * Keeps blocks as plain play does: a journal while they are played, a record once they are over. What the player said of a
 * block lies beside its journal, and later in a folder of notes; own balls and bowler in a file of the kit.
 */
export function fileKeeper(environment: Readonly<Record<string, string | undefined>>): Keeper {
  const folder = dataFolder(undefined, environment)
  const records = recordsFolder(folder)
  const player = environment[PLAYER_VARIABLE] || undefined
  const unfinished = unfinishedBlocks(folder, player)
  const debriefs = debriefsFolder(folder)
  const kitPath = join(folder, 'kit.json')
  const notesOf = (recordPath: string) => join(saidFolder(folder), basename(recordPath))
  const inTurn = queue()
  return {
    leftBlocks: () => unfinished.left(),
    resume: (from) => unfinished.resume(from),
    keepThrow: (scenario, before, after) => inTurn(() => unfinished.keepThrow(scenario, before, after)),
    keepSaid: (block, notes) => inTurn(() => unfinished.keepSaid(block, notes)),
    file: (scenario, block, notes) =>
      inTurn(async () => {
        const path = await writeRecord(recordOf(scenario, block, unfinished.playerOf(block)), records)
        await replaceFile(notesOf(path), notesText(notes))
        await unfinished.done(block)
        return path
      }),
    keepNotes: (recordPath, notes) => inTurn(() => replaceFile(notesOf(recordPath), notesText(notes))),
    keepWorked: (scenario, block, worked) => inTurn(() => keepAccount(debriefs, recordOf(scenario, block), worked)),
    hasPast: () => hasPastBlocks(records),
    listPast: () => listPastBlocks(records),
    async openPast(path) {
      const said = await textAt(notesOf(path))
      const notes = (said === null ? null : readNotes(said)) ?? noNotes('block')
      const record = await readRecord(path)
      const worked = await readKeptAccount(debriefs, record)
      return { ...replayRecord(record, path), notes, recordPath: path, ...(worked ? { worked } : {}) }
    },
    findKit: () => kitAt(kitPath),
    keepKit: (kit) =>
      inTurn(async () => {
        const { problem } = await kitAt(kitPath)
        const aside = problem === '' ? null : await setAside(kitPath)
        await replaceFile(kitPath, kitText(kit))
        return aside
      }),
    leave: () => inTurn(unfinished.leave),
  }
}

async function kitAt(path: string): Promise<{ kit: OwnKit; problem: string }> {
  const text = await textAt(path)
  if (text === null) return { kit: EMPTY_KIT, problem: '' }
  const read = readKit(basename(path), text)
  if ('kit' in read) return { kit: read.kit, problem: '' }
  return { kit: EMPTY_KIT, problem: `Your bag and bowler are not used, for ${read.problem}` }
}

/** Does one thing after the other, so that an earlier state never lands on a later one; one that fails stops no other. */
function queue(): <Result>(work: () => Promise<Result>) => Promise<Result> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const done = last.then(work)
    last = done.catch(() => {})
    return done
  }
}
