import { readFile } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { replaceFile } from '../../files/text/replace-file.js'
import { type Note, readNotes } from '../../store/coach-notes.js'
import { debriefName } from '../../store/debrief-name.js'
import { type BlockRecord, readRecord } from '../../store/record.js'
import { replayRecord } from '../../store/replay.js'
import { debriefOf } from '../debrief/debrief.js'
import { type DebriefReport, debriefText } from '../debrief/debrief-report.js'

/** A record with its debrief and what a coach wrote to it. */
export interface ReviewedBlock {
  readonly path: string
  /** Who the record says played; else the folder it lies in, one for each player of a group. */
  readonly player: string
  readonly record: BlockRecord
  readonly report: DebriefReport
  readonly notes: readonly Note[]
}

/**
 * Reads and debriefs a record. A debrief takes its time, so it is kept in `cache` under a name made of the record but for its
 * player, the model, the grade and the program: the same again gives the same.
 *
 * @throws ScenarioError
 */
export async function reviewBlock(
  path: string,
  cache: string,
  reached: (done: number, of: number) => void,
): Promise<ReviewedBlock> {
  const record = await readRecord(path)
  const notes = await readNotes(path)
  const kept = join(cache, `${debriefName(record)}.json`)
  const report = (await readKept(kept)) ?? (await debriefAndKeep(record, path, kept, reached))
  return { path, player: record.player ?? folderName(path), record, report, notes }
}

/** The folder of a record; of the program's own folder of records, whose it is. */
function folderName(path: string): string {
  const folder = dirname(resolve(path))
  return basename(folder) === 'records' ? basename(dirname(folder)) : basename(folder)
}

async function readKept(path: string): Promise<DebriefReport | null> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as DebriefReport
  } catch {
    return null
  }
}

async function debriefAndKeep(
  record: BlockRecord,
  path: string,
  kept: string,
  reached: (done: number, of: number) => void,
): Promise<DebriefReport> {
  const text = debriefText(record, debriefOf(replayRecord(record, path), { alternatives: false, reached }))
  await replaceFile(kept, text)
  return JSON.parse(text) as DebriefReport
}
