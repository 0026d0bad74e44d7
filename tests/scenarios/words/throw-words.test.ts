import { describe, expect, it } from 'vitest'
import { contactWords, fellWords, seenParts } from '../../../src/scenarios/words/throw-words.js'
import type { Contact, ThrowRecord } from '../../../src/sim/world/block/types.js'
import { FULL_RACK, maskOf } from '../../../src/sim/world/pins/leaves.js'

interface Seen {
  readonly before?: number
  readonly after: number
  readonly contact?: Contact
  readonly arrows?: number
  readonly breakpoint?: readonly [board: number, feet: number]
}

const record = ({
  before = FULL_RACK,
  after,
  contact = 'pocket',
  arrows = 12,
  breakpoint = [8, 42],
}: Seen): ThrowRecord =>
  ({
    spot: { phase: 'game', lane: 0, game: 1, frame: 1, ball: before === FULL_RACK ? 1 : 2 },
    standingBefore: before,
    standingAfter: after,
    observation: {
      arrowsBoard: arrows,
      breakpointBoard: breakpoint[0],
      breakpointFeet: breakpoint[1],
      contact,
      speedMph: 16.2,
      standing: after,
    },
  }) as ThrowRecord

describe('what a throw did', () => {
  it('is told by what stands', () => {
    expect(fellWords(record({ after: 0 }), 'right')).toBe('Strike.')
    expect(fellWords(record({ after: maskOf([10]) }), 'right')).toBe('9 pins, leaving the 10.')
    expect(fellWords(record({ after: maskOf([3, 5, 6]) }), 'right')).toBe('7 pins, leaving 3-5-6.')
    expect(fellWords(record({ after: maskOf([7, 10]) }), 'right')).toBe('8 pins, leaving the 7-10 bedposts.')
    expect(fellWords(record({ after: FULL_RACK & ~maskOf([10]) }), 'right')).toBe('1 pin, leaving all but the 10.')
    expect(fellWords(record({ before: maskOf([10]), after: 0 }), 'right')).toBe('Spare.')
    expect(fellWords(record({ after: FULL_RACK }), 'right')).toBe('No pins, leaving all ten.')
  })

  // Geometry: the 10 pin stands three boards from a right-hander's edge, the 7 pin three from a left-hander's.
  it('says to which side a spare was missed, for either hand', () => {
    const past10 = {
      before: maskOf([10]),
      after: maskOf([10]),
      contact: 'missed',
      arrows: 18,
      breakpoint: [9, 60],
    } as const
    expect(fellWords(record(past10), 'right')).toBe('Missed the 10 pin left.')
    const past7 = {
      before: maskOf([7]),
      after: maskOf([7]),
      contact: 'past',
      arrows: 22,
      breakpoint: [31, 60],
    } as const
    expect(fellWords(record(past7), 'right')).toBe('Missed the 7 pin right.')
    const left7 = { ...past10, before: maskOf([7]), after: maskOf([7]) }
    expect(fellWords(record(left7), 'left')).toBe('Missed the 7 pin right.')
  })
})

describe('what was seen', () => {
  it('says where a ball crossed the arrows, or that it never came so far', () => {
    const gutter = { after: FULL_RACK, contact: 'gutter', breakpoint: [40, 12] } as const
    expect(seenParts(record({ ...gutter, arrows: 39 }), 'right')[0]).toBe('39 at the arrows')
    expect(seenParts(record({ ...gutter, arrows: 40 }), 'right')[0]).toBe('off the lane before the arrows')
    expect(seenParts(record({ ...gutter, arrows: 0 }), 'right')[0]).toBe('off the lane before the arrows')
  })

  it('names the side of a miss by the hand', () => {
    expect([contactWords('missed', 'right'), contactWords('past', 'right')]).toEqual(['missed right', 'missed left'])
    expect([contactWords('missed', 'left'), contactWords('past', 'left')]).toEqual(['missed left', 'missed right'])
    expect(contactWords('crossover', 'right')).toBe('Brooklyn side')
  })

  // Closed form: from board 8 at 42 ft to 17.5 at 60 ft a path that bends evenly comes in at twice its mean slope,
  // 2 x 9.5 boards of 1.0641 in over 18 ft: 5.3 degrees.
  it('has entry board and angle as far as the eye can tell, and no angle where there was no turn to see', () => {
    expect(seenParts(record({ after: 0 }), 'right')).toEqual([
      '12 at the arrows',
      '8 at 42 ft',
      'in the pocket (17-18 at 5 deg)',
      '16.2 mph',
    ])
    expect(seenParts(record({ after: 0, breakpoint: [12, 58] }), 'right')[2]).toBe('in the pocket (17-18)')
    expect(seenParts(record({ after: 1, before: 512 }), 'right').join()).not.toContain('pocket')
  })
})
