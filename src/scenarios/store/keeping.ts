import { basename, join } from 'node:path'
import type { Keeper } from '../../tui/state/services.js'
import { replaceFile } from '../files/text/replace-file.js'
import { setAside } from '../files/text/set-aside.js'
import { textAt } from '../files/text/text-at.js'
import { notesAt, writeNotes } from './block-notes-file.js'
import { dataFolder, debriefsFolder, recordsFolder, saidWithRecord } from './data-folder.js'
import { keepAccount, readKeptAccount } from './kept-account.js'
import { EMPTY_KIT, kitText, type OwnKit, readKit } from './own-kit.js'
import { hasPastBlocks, listPastBlocks } from './past-blocks.js'
import { PLAYER_VARIABLE } from './player-name.js'
import { readRecord, recordOf, writeRecord } from './record.js'
import { replayRecord } from './replay.js'
import { unfinishedBlocks } from './unfinished-blocks.js'

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
  const notesOf = (recordPath: string) => saidWithRecord(folder, recordPath)
  const inTurn = queue()
  return {
    leftBlocks: unfinished.leftBlocks,
    resume: unfinished.resume,
    keepThrow: (scenario, before, after) => inTurn(() => unfinished.keepThrow(scenario, before, after)),
    keepSaid: (block, notes) => inTurn(() => unfinished.keepSaid(block, notes)),
    file: (scenario, block, notes) =>
      inTurn(async () => {
        const path = await writeRecord(recordOf(scenario, block, unfinished.playerOf(block)), records)
        await writeNotes(notesOf(path), notes)
        await unfinished.done(block)
        return path
      }),
    keepNotes: (recordPath, notes) => inTurn(() => writeNotes(notesOf(recordPath), notes)),
    keepWorked: (scenario, block, worked) => inTurn(() => keepAccount(debriefs, recordOf(scenario, block), worked)),
    hasPast: () => hasPastBlocks(records),
    listPast: () => listPastBlocks(records),
    async openPast(path) {
      const notes = await notesAt(notesOf(path))
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
