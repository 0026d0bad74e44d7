import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import { replaceFile } from './atomic-write.js'
import { type BlockRecord, readRecord, recordText } from './record.js'
import { ScenarioError } from './scenario-error.js'

/** The one block that was left before its end, to be taken up again. */
const fileIn = (data: string): string => join(data, 'unfinished.json')

/** @throws WriteError */
export async function keepUnfinished(record: BlockRecord, data: string): Promise<void> {
  await replaceFile(fileIn(data), recordText(record))
}

/** The block left unfinished; null where there is none, or one that this program can no longer read. */
export async function readUnfinished(data: string): Promise<BlockRecord | null> {
  try {
    return await readRecord(fileIn(data))
  } catch (fault) {
    if (fault instanceof ScenarioError) return null
    throw fault
  }
}

export async function forgetUnfinished(data: string): Promise<void> {
  await rm(fileIn(data), { force: true })
}
