import { journalFromText } from '../../src/scenarios/block-store/journal-text.js'
import { readTextFile } from '../../src/scenarios/read-text-file.js'
import type { BlockRecord } from '../../src/scenarios/record.js'

/** The record that a journal would be as it was left. */
export const readJournal = async (path: string): Promise<BlockRecord> =>
  journalFromText(path, await readTextFile(path)).record
