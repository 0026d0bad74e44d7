import { readFile, rm } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { dataFolder, recordsFolder } from '../scenarios/data-folder.js'
import { type BlockRecord, readRecord, recordOf, writeRecord } from '../scenarios/record.js'
import { replaceFile } from '../scenarios/replace-file.js'
import { replayRecord } from '../scenarios/replay.js'
import type { Scenario } from '../scenarios/scenario.js'
import { ScenarioError } from '../scenarios/scenario-error.js'
import type { BlockState } from '../sim/block/types.js'
import { EMPTY_KIT, kitText, type OwnKit, readKit } from './kit/own-kit.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './notes.js'
import { hasPastBlocks, listPastBlocks, type PastBlock } from './past-blocks.js'
import type { KeptBlock, PlayedBlock } from './services.js'

export interface Keeper {
  find(): Promise<KeptBlock | null>
  /** Keeps a block; resolves to the path of its record once it is finished. */
  keep(scenario: Scenario, block: BlockState, finished: boolean, notes: BlockNotes): Promise<string | null>
  /** Replaces the notes beside a filed record. */
  keepNotes(recordPath: string, notes: BlockNotes): Promise<void>
  hasPast(): Promise<boolean>
  listPast(): Promise<PastBlock[]>
  /** @throws ScenarioError */
  openPast(path: string): Promise<PlayedBlock>
  /** The kit, or why there is none though there is a file. */
  findKit(): Promise<{ kit: OwnKit; problem: string }>
  keepKit(kit: OwnKit): Promise<void>
}

/**
 * Keeps the unfinished block in one file, replaced whole after each throw, and files finished blocks among the records.
 * What the player said of a block lies beside its record in a folder of notes; own balls and bowler in a file of the kit.
 * A kept block that cannot be read is left where it is and not offered.
 */
export function fileKeeper(environment: Readonly<Record<string, string | undefined>>): Keeper {
  const folder = dataFolder(undefined, environment)
  const records = recordsFolder(folder)
  const unfinished = join(folder, 'unfinished.json')
  const unfinishedNotes = join(folder, 'unfinished-notes.json')
  const kitPath = join(folder, 'kit.json')
  const notesOf = (recordPath: string) => join(folder, 'notes', basename(recordPath))
  let queue: Promise<void> = Promise.resolve()
  // One after the other, so that an earlier state never lands on a later one; a failed one does not stop the next.
  const inTurn = <Result>(work: () => Promise<Result>): Promise<Result> => {
    const done = queue.then(work)
    queue = done.then(
      () => {},
      () => {},
    )
    return done
  }
  return {
    async find() {
      try {
        const record = await readRecord(unfinished)
        const notes = await notesAt(unfinishedNotes)
        return {
          title: record.scenario.title,
          throws: record.decisions.length,
          takeUp: () => played(record, unfinished, notes, null),
        }
      } catch (fault) {
        if (fault instanceof ScenarioError) return null
        throw fault
      }
    },
    keep: (scenario, block, finished, notes) =>
      inTurn(async () => {
        const record = recordOf(scenario, block)
        if (!finished) {
          await replaceFile(unfinished, `${JSON.stringify(record)}\n`)
          await replaceFile(unfinishedNotes, notesText(notes))
          return null
        }
        const path = await writeRecord(record, records)
        await replaceFile(notesOf(path), notesText(notes))
        await Promise.all([unfinished, unfinishedNotes].map((file) => rm(file, { force: true })))
        return path
      }),
    keepNotes: (recordPath, notes) => inTurn(() => replaceFile(notesOf(recordPath), notesText(notes))),
    hasPast: () => hasPastBlocks(records),
    listPast: () => listPastBlocks(records),
    async openPast(path) {
      return played(await readRecord(path), path, await notesAt(notesOf(path)), path)
    },
    async findKit() {
      const text = await textAt(kitPath)
      if (text === null) return { kit: EMPTY_KIT, problem: '' }
      const read = readKit(kitPath, text)
      return 'kit' in read ? { kit: read.kit, problem: '' } : { kit: EMPTY_KIT, problem: read.problem }
    },
    keepKit: (kit) => inTurn(() => replaceFile(kitPath, kitText(kit))),
  }
}

function played(record: BlockRecord, name: string, notes: BlockNotes | null, recordPath: string | null): PlayedBlock {
  return { ...replayRecord(record, name), notes: notes ?? noNotes('block'), recordPath }
}

async function notesAt(path: string): Promise<BlockNotes | null> {
  const text = await textAt(path)
  return text === null ? null : readNotes(text)
}

/** What a file holds; null where there is none. */
async function textAt(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8')
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw fault
  }
}
