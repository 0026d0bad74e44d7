import { existsSync } from 'node:fs'
import { z } from 'zod'
import { listOf, prose, table, wholeFrom } from '../files/schema/fields.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { replaceFile } from '../files/text/replace-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { readSourceText } from '../files/text/source-text.js'
import { alone } from './alone.js'

const FORMAT = 'dryboard-notes'
const VERSION = 1

const notesSchema = table(
  {
    format: z.literal(FORMAT, { error: () => `"${FORMAT}"` }),
    version: z.literal(VERSION, { error: () => String(VERSION) }),
    notes: listOf(
      table({ game: wholeFrom(1, 12), frame: wholeFrom(1, 10), text: prose(2000) }, 'a note'),
      0,
      1000,
      'notes',
    ),
  },
  "a coach's notes on a record",
)

/** What a coach wrote at a frame. */
export type Note = z.output<typeof notesSchema>['notes'][number]

/** Notes lie beside their record and never in it: a record is not changed once it is written. */
const notesPath = (record: string): string => `${record.replace(/\.json$/, '')}.notes.json`

/** The notes on a record, in the order they were written; none where there is no file of them. @throws ScenarioError */
export async function readNotes(record: string): Promise<readonly Note[]> {
  const path = notesPath(record)
  if (!existsSync(path)) return []
  const source = readSourceText(path, await readTextFile(path))
  refuseNewer(source, VERSION)
  const checked = notesSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  return checked.data.notes
}

/** Adds a note and returns the file it is in. @throws ScenarioError, WriteError */
export async function addNote(record: string, note: Note): Promise<string> {
  const path = notesPath(record)
  await alone(`${path}.lock`, async () => {
    const notes = [...(await readNotes(record)), note]
    await replaceFile(path, `${JSON.stringify({ format: FORMAT, version: VERSION, notes }, null, 1)}\n`)
  })
  return path
}
