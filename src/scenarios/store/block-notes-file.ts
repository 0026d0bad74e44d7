import { replaceFile } from '../files/text/replace-file.js'
import { textAt } from '../files/text/text-at.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './block-notes.js'

/** Notes as kept in a file; empty ones where there are none that this program understands. */
export async function notesAt(path: string): Promise<BlockNotes> {
  const text = await textAt(path)
  return (text === null ? null : readNotes(text)) ?? noNotes('block')
}

/** @throws WriteError */
export async function writeNotes(path: string, notes: BlockNotes): Promise<void> {
  await replaceFile(path, notesText(notes))
}
