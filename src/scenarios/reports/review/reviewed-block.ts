import { readFile } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { replaceFile } from '../../files/text/replace-file.js'
import { type Note, readNotes } from '../../store/coach-notes.js'
import { debriefName } from '../../store/debrief-name.js'
import { readKeptAccount } from '../../store/kept-account.js'
import { type BlockRecord, readRecord } from '../../store/record.js'
import { sealedText, unsealed } from '../../store/sealed-text.js'
import { type DebriefReport, debriefReport } from '../debrief/debrief-report.js'
import { type DebriefWork, workedDebrief } from '../debrief/worked-debrief.js'

const FORMAT = 'dryboard-debrief'
const VERSION = 1

/** A record with its debrief and what a coach wrote to it. */
export interface ReviewedBlock {
  readonly path: string
  /** Who the record says played; else the folder it lies in, one for each player of a group. A policy counts as nobody else. */
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
  const block = await blockWithoutNotes(path, cache, reached)
  return { ...block, notes: await readNotes(path) }
}

/** The same, whatever stands in the notes beside it. @throws ScenarioError */
export async function blockWithoutNotes(
  path: string,
  cache: string,
  reached: (done: number, of: number) => void,
): Promise<ReviewedBlock> {
  const record = await readRecord(path)
  const kept = join(cache, `${debriefName(record)}.json`)
  const report = (await readKept(kept)) ?? (await debriefAndKeep(record, { path, folder: cache, reached }, kept))
  return { path, player: playerOf(record, path), record, report, notes: [] }
}

/**
 * The same as far as it is worked out already; null where a choice would have to be priced first. Notes are left out.
 *
 * @throws ScenarioError
 */
export async function blockIfPriced(path: string, cache: string): Promise<ReviewedBlock | null> {
  const record = await readRecord(path)
  const kept = join(cache, `${debriefName(record)}.json`)
  const report = (await readKept(kept)) ?? (await fromAccount(record, path, cache, kept))
  return report && { path, player: playerOf(record, path), record, report, notes: [] }
}

async function fromAccount(
  record: BlockRecord,
  path: string,
  cache: string,
  kept: string,
): Promise<DebriefReport | null> {
  if (!(await readKeptAccount(cache, record))?.account) return null
  return debriefAndKeep(record, { path, folder: cache, reached: () => {} }, kept)
}

function playerOf({ player, origin }: BlockRecord, path: string): string {
  const named = player ?? folderName(path)
  return origin.cameToBe === 'auto' ? `${named} (a policy plays)` : named
}

/** The folder of a record; of the program's own folder of records, whose it is. */
function folderName(path: string): string {
  const folder = dirname(resolve(path))
  return basename(folder) === 'records' ? basename(dirname(folder)) : basename(folder)
}

async function readKept(path: string): Promise<DebriefReport | null> {
  try {
    const text = unsealed(FORMAT, VERSION, await readFile(path, 'utf8'))
    return text === null ? null : (JSON.parse(text) as DebriefReport)
  } catch {
    return null
  }
}

async function debriefAndKeep(record: BlockRecord, work: DebriefWork, kept: string): Promise<DebriefReport> {
  const { debrief } = await workedDebrief(record, work)
  const text = JSON.stringify(debriefReport(record, debrief))
  // It can be made again; that there is no room for it is no reason to stop.
  await replaceFile(kept, sealedText(FORMAT, VERSION, text)).catch(() => {})
  return JSON.parse(text) as DebriefReport
}
