import { describe, expect, it } from 'vitest'
import { type BlockNotes, noNotes, notesText, readNotes } from '../../../src/scenarios/store/block-notes.js'

describe('notes beside a record', () => {
  it('come back as they were written', () => {
    const notes: BlockNotes = {
      mode: 'test',
      calls: [null, { contact: 'pocket', confidencePercent: 80 }],
      ownFindings: [
        { throwIndex: 1, finding: 'moved-too-late' },
        { throwIndex: 4, finding: 'nothing-wrong' },
      ],
    }
    expect(readNotes(notesText(notes))).toEqual(notes)
    expect(readNotes(notesText(noNotes('drill')))).toEqual(noNotes('drill'))
  })

  it('are none where the text says nothing this program understands', () => {
    const later = notesText(noNotes('drill')).replace('"version":1', '"version":2')
    for (const text of ['', '{', '{}', '[1]', later]) expect(readNotes(text)).toBeNull()
  })
})
