import { readTextFile } from '../../../src/scenarios/files/text/read-text-file.js'
import { journalFromText } from '../../../src/scenarios/store/journal-text.js'
import type { BlockRecord } from '../../../src/scenarios/store/record.js'

/** The record that a journal would be as it was left. */
export const readJournal = async (path: string): Promise<BlockRecord> =>
  journalFromText(path, await readTextFile(path)).record
