import { replaceFile } from '../scenarios/replace-file.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './notes.js'
import { textAt } from './text-at.js'

/** Notes as kept in a file; empty ones where there are none that this program understands. */
export async function notesAt(path: string): Promise<BlockNotes> {
  const text = await textAt(path)
  return (text === null ? null : readNotes(text)) ?? noNotes('block')
}

/** @throws WriteError */
export async function writeNotes(path: string, notes: BlockNotes): Promise<void> {
  await replaceFile(path, notesText(notes))
}
