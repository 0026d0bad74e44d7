import { describe, expect, it } from 'vitest'
import { findingParagraph, findingWords, type ToldBlock } from '../../../src/scenarios/words/finding-words.js'
import { luckWords } from '../../../src/scenarios/words/luck-words.js'
import { luckNotes } from '../../../src/sim/analysis/debrief/findings/luck-notes.js'
import type { Tag } from '../../../src/sim/analysis/debrief/findings/tag.js'
import { TAG_KINDS } from '../../../src/sim/analysis/debrief/findings/tag.js'
import { boardToMetres } from '../../../src/sim/units.js'
import type { Decision, ThrowRecord } from '../../../src/sim/world/block/types.js'
import { line, pearlLine, recordOf } from '../../sim/analysis/debrief/readings-for-tests.js'
import { bag } from '../../sim/world/ball/bag-for-tests.js'

const frame = (number: number, decision: Decision): ThrowRecord => {
  const record = recordOf(decision)
  return { ...record, spot: { ...record.spot, frame: number } }
}

const throws = [frame(3, line(24, 12)), frame(4, line(24, 12)), frame(5, line(24, 12)), frame(6, line(26, 13))]
const block = (hand: 'right' | 'left' = 'right', games = 1): ToldBlock =>
  ({ setup: { bag, bowler: { hand }, games }, throws }) as unknown as ToldBlock

const LATE: Tag = {
  kind: 'moved-too-late',
  throws: [1, 2],
  game: 1,
  frames: [4, 5],
  pins: 2.24,
  evidence: [
    { what: 'throws-cost', value: 2.24, unit: 'pins' },
    { what: 'throws-on-the-line', value: 2, unit: 'throws' },
  ],
  at: 2,
  before: 0,
  mend: line(26, 13),
  mendsAll: true,
}

describe('a finding', () => {
  it('says what was seen, how often, what that meant, what it cost and the smallest change that mends it', () => {
    const { title, seen, meant, mend, figures } = findingWords(LATE, block())
    expect(title).toBe('Moved too late: cost 2.2 pins. Frames 4 and 5.')
    expect(seen).toBe(
      'Seen in frame 3: 12 at the arrows, 8 at 42 ft, high (19 at 6 deg). These balls: high both times.',
    )
    expect(meant).toBe('Slide 24, target 12 had been good and no longer was.')
    expect(mend).toBe('What costs nothing: 2 and 1 left, from there.')
    expect(figures).toBe('Figures: these throws cost 2.2 pins; 2 throws on the line after it stopped being good.')
  })

  it('counts its change from the nearest line thrown, which may be one of before', () => {
    const later = [...throws, frame(7, pearlLine(30, 15))]
    const tag: Tag = { ...LATE, kind: 'wrong-ball', throws: [4], frames: [7], at: 4, before: 3, mend: line(26, 13.5) }
    expect(findingWords(tag, { ...block(), throws: later }).mend).toBe(
      'What costs nothing: target 0.5 left, from the line of frame 6.',
    )
    expect(findingWords({ ...tag, mend: line(26, 13) }, { ...block(), throws: later }).mend).toBe(
      'What costs nothing: the line of frame 6 again.',
    )
  })

  it('says left and right as a left-hander sees it, and the game where there are several', () => {
    expect(findingWords(LATE, block('left')).mend).toBe('What costs nothing: 2 and 1 right, from there.')
    expect(findingWords(LATE, block('right', 3)).title).toBe('Moved too late: cost 2.2 pins. Game 1, frames 4 and 5.')
  })

  it.each(TAG_KINDS)('of kind %s is fluent and blames nobody', (kind) => {
    const words = findingParagraph(findingWords({ ...LATE, kind, at: 3, mend: line(28, 14) }, block()))
    expect(words).not.toMatch(/undefined|NaN| {2}|\.\.|\b(mistake|poor|stupid|lazy|careless|well done)\b/)
    expect(words).toMatch(/^[A-Z].*\.$/)
  })
})

describe('luck', () => {
  const ledger = { givenAwayPins: 0, patternSwingPins: 0, hiddenPins: 0, deliveryPins: 0, carryPins: 0 }

  it('has a line of its own from five pins a frame on, whatever the choice cost', () => {
    const throwsOf = (deliveryPins: number, carryPins: number, givenAwayPins: number) =>
      luckNotes([{ index: 4, game: 1, frame: 3, ledger: { ...ledger, deliveryPins, carryPins, givenAwayPins } }])
    expect(throwsOf(5.1, -4.9, 2)).toEqual([{ game: 1, frame: 3, kind: 'delivery', luckPins: 5.1, index: 4 }])
    expect(throwsOf(4.9, -5.1, 0)).toMatchObject([{ kind: 'carry', luckPins: -5.1 }])
    expect(throwsOf(4.9, 4.9, 0)).toEqual([])
  })

  it('is that of the frame, told of the ball that most of it came from', () => {
    const balls = [4, 2].map((deliveryPins, at) => ({
      index: at,
      game: 1,
      frame: 9,
      ledger: { ...ledger, deliveryPins },
    }))
    expect(luckNotes(balls)).toEqual([{ game: 1, frame: 9, kind: 'delivery', luckPins: 6, index: 0 }])
  })

  it('says how far from where one aimed, with the sign of the ledger', () => {
    const record = frame(7, line(24, 12))
    const path = new Float64Array(120).fill(boardToMetres(10))
    const missed = { ...record, truth: { ...record.truth, path } }
    const note = { game: 1, frame: 7, kind: 'delivery', luckPins: 6.2, index: 0 } as const
    expect(luckWords(note, [missed], 1, 'right')).toBe('Frame 7: delivery -6.2: 2 boards right of where you aimed.')
    expect(luckWords(note, [missed], 1, 'left')).toContain('2 boards left of where you aimed')
    expect(luckWords({ ...note, kind: 'carry', luckPins: -5.5 }, [missed], 3, 'right')).toBe(
      'Game 1, frame 7: carry +5.5: high (17.5 at 4.6 deg), strike.',
    )
  })
})
