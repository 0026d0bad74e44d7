import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  allFindings,
  findingsOf,
  LEAST_TAG_PINS,
  MOST_TAGS_PER_GAME,
} from '../../../../../src/sim/analysis/debrief/findings/tags.js'
import type { Reading } from '../../../../../src/sim/analysis/debrief/reading/reading.js'
import { firstBall, line, pearlLine, recordOf, spare, staying, surprise } from '../readings-for-tests.js'

// The findings and their tests by counterfactual are common practice of coaches put into figures; no source for the words.
// Where a case says what is right, that follows from how the case was built.

const tags = (readings: readonly Reading[]) => findingsOf({ readings }).tags
const kinds = (readings: readonly Reading[]) => tags(readings).map(({ kind }) => kind)

describe('findings about one choice', () => {
  it('names the ball where that is what cost', () => {
    const [tag, ...others] = tags([firstBall(3, line(24, 12), { best: pearlLine(25, 13), ball: 2.1 })])
    expect(others).toEqual([])
    expect(tag).toMatchObject({ kind: 'wrong-ball', frames: [3], throws: [2] })
    expect(tag.pins).toBeCloseTo(2.1, 9)
    expect(tag).toMatchObject({ at: 2, mend: pearlLine(25, 13), mendsAll: true })
  })

  it.each([
    ['slide', 'wrong-feet'],
    ['target', 'wrong-target'],
    ['speed', 'wrong-speed'],
  ] as const)('names the %s where it alone cost', (part, kind) => {
    const allThree = { ...line(26, 13), aim: { feetBoard: 26, targetBoard: 13, speedStep: 1 as const } }
    expect(kinds([firstBall(2, line(24, 12), { best: allThree, [part]: 1.7 })])).toEqual([kind])
  })

  it('names the line where slide and target both cost', () => {
    const [tag] = tags([firstBall(2, line(24, 12), { best: line(26, 13), slide: 0.9, target: 0.9 })])
    expect(tag.kind).toBe('wrong-line')
    expect(tag).toMatchObject({ mend: line(26, 13), mendsAll: true })
  })

  it('mends no more of a choice that is wrong in two ways than the part it is about', () => {
    const [, lineTag] = tags([
      firstBall(2, line(24, 12), { best: pearlLine(26, 13), ball: 1.5, slide: 0.4, target: 0.6 }),
    ])
    expect(lineTag).toMatchObject({ kind: 'wrong-line', mend: line(26, 13), mendsAll: false })
  })

  it('divides a choice that is wrong in two ways between two findings', () => {
    const found = tags([firstBall(2, line(24, 12), { best: pearlLine(26, 13), ball: 1.5, slide: 0.4, target: 0.6 })])
    expect(found.map(({ kind, pins }) => [kind, Number(pins.toFixed(9))])).toEqual([
      ['wrong-ball', 1.5],
      ['wrong-line', 1],
    ])
  })

  it('tells spares lost by the ball from spares lost by the line', () => {
    expect(kinds([spare(1, { ball: 2, line: 0.1 })])).toEqual(['spare-ball'])
    expect(kinds([spare(1, { ball: 0.1, line: 2 })])).toEqual(['spare-line'])
    const [both] = tags([spare(1, { ball: 2, line: 0 }), spare(4, { ball: 1, line: 0 })])
    expect(both).toMatchObject({ kind: 'spare-ball', frames: [1, 4] })
    expect(both.pins).toBeCloseTo(3, 9)
  })

  it('points out a throw that would have taught more for the same pins', () => {
    const [tag] = tags([firstBall(1, line(24, 12), { best: line(26, 13), lesson: 1.2 })])
    expect(tag.kind).toBe('skipped-a-probe')
    expect(tag.pins).toBeCloseTo(1.2, 9)
  })
})

describe('findings about moves', () => {
  const stale = (frame: number, pins: number) =>
    firstBall(frame, line(24, 12), { staying: staying(line(24, 12)), best: line(26, 12), slide: pins })
  const good = (frame: number) => firstBall(frame, line(24, 12), { staying: staying(line(24, 12)) })

  it('says that a move came too late and sums what the wait cost', () => {
    const [tag, ...others] = tags([good(3), stale(4, 0.8), stale(5, 1.4), stale(6, 2)])
    expect(others).toEqual([])
    expect(tag).toMatchObject({ kind: 'moved-too-late', frames: [4, 5, 6] })
    expect(tag.pins).toBeCloseTo(4.2, 9)
    expect(tag).toMatchObject({ at: 5, before: 0, mend: line(26, 12) })
  })

  it('does not call it too late where the line never was good', () => {
    expect(kinds([stale(4, 0.8), stale(5, 1.4)])).toEqual(['wrong-feet'])
  })

  it('says that a change was missed where the throw before had shown it', () => {
    const told = { ...stale(4, 1.5), staying: staying(line(24, 12), { innovation: surprise(2.5, 0.1) }) }
    const [tag] = tags([good(3), told])
    expect(tag.kind).toBe('missed-a-change')
    expect(tag.evidence).toContainEqual({ what: 'off-the-expected-entry', value: 2.5, unit: 'boards' })
    expect(tag.evidence).toContainEqual({ what: 'down-to-the-lane', value: 0.9, unit: 'share' })
  })

  const movedOff = (innovation: ReturnType<typeof surprise>, to = line(26, 13), stayingCost = 0) =>
    firstBall(5, to, {
      staying: staying(line(24, 12), { record: recordOf(line(24, 12), 14), chargedPins: stayingCost, innovation }),
      best: line(24, 12),
      slide: 1,
      target: 0.6,
    })

  it('says that the lane was blamed for a bad throw', () => {
    const [tag, ...others] = tags([movedOff(surprise(3, 0.9))])
    expect(others).toEqual([])
    expect(tag.kind).toBe('blamed-the-lane')
    expect(tag.pins).toBeCloseTo(1.6, 9)
    expect(tag.evidence).toContainEqual({ what: 'off-the-target', value: 2, unit: 'boards' })
    expect(tag.mend).toEqual(line(24, 12))
  })

  it('blames for no more than staying would have saved', () => {
    const found = allFindings({ readings: [movedOff(surprise(3, 0.9), line(26, 13), 0.4)] })
    const pinsOf = (kind: string) => found.find((tag) => tag.kind === kind)?.pins ?? 0
    expect(pinsOf('blamed-the-lane')).toBeGreaterThan(0)
    expect(pinsOf('blamed-the-lane')).toBeLessThanOrEqual(1.2 + 1e-9)
    expect(found.reduce((sum, { pins }) => sum + pins, 0)).toBeCloseTo(1.6, 9)
  })

  it('does not say so of a move that did not answer the miss, nor of a surprise that was the lane', () => {
    // moved right after a high ball: that makes it higher still
    expect(kinds([movedOff(surprise(3, 0.9), line(22, 11))])).toEqual(['moved-too-early'])
    expect(kinds([movedOff(surprise(3, 0.2))])).toEqual(['moved-too-early'])
    expect(kinds([movedOff(surprise(0.2, 0.9))])).toEqual(['moved-too-early'])
  })

  const moved = (to: ReturnType<typeof line>, needed: ReturnType<typeof line>) =>
    firstBall(6, to, {
      staying: staying(line(24, 12), { chargedPins: 3 }),
      best: needed,
      slide: 0.6,
      target: 0.6,
    })

  it('says that a move was too small or too far', () => {
    expect(kinds([moved(line(25, 12.5), line(28, 14))])).toEqual(['move-too-small'])
    expect(kinds([moved(line(30, 15), line(27, 13.5))])).toEqual(['move-too-far'])
  })

  it('says that a move went the other way', () => {
    expect(kinds([moved(line(22, 11), line(28, 14))])).toEqual(['moved-the-wrong-way'])
  })

  it('says nothing of a move that was about right, or across the one that was called for', () => {
    expect(kinds([moved(line(26, 13), line(27, 13.5))])).toEqual(['wrong-line'])
    // feet left and target right, where both had to go left
    expect(kinds([moved(line(26, 8), line(28, 14))])).toEqual(['wrong-line'])
  })
})

describe('all findings together', () => {
  const part = fc.double({ min: 0, max: 3, noNaN: true })
  const reading = fc
    .record({ ball: part, slide: part, target: part, speed: part, lesson: part, stayed: part, stands: fc.boolean() })
    .chain((one) => fc.constantFrom(24, 26, 28).map((feet) => ({ ...one, feet })))
  const block = fc.array(reading, { minLength: 1, maxLength: 12 }).map((all) =>
    all.map(({ stayed, stands, feet, ...parts }, at) =>
      firstBall(at + 1, line(feet, 12), {
        ...parts,
        best: pearlLine(27, 13.5),
        stands,
        staying: staying(line(24, 12), { chargedPins: stayed, innovation: surprise(3, 0.9) }),
      }),
    ),
  )
  const chargedIn = (readings: readonly Reading[]): number =>
    readings.reduce((sum, { verdict }) => sum + verdict.givenAwayPins, 0)

  it('add up to what was charged, the untold rest with them, to rounding', () => {
    fc.assert(
      fc.property(block, (readings) => {
        const { tags: told, untoldPins } = findingsOf({ readings })
        const sum = told.reduce((pins, tag) => pins + tag.pins, 0)
        expect(Math.abs(sum + untoldPins - chargedIn(readings))).toBeLessThan(1e-9)
        expect(untoldPins).toBeGreaterThan(-1e-9)
      }),
    )
  })

  it('leave nothing of a choice that stands unexplained', () => {
    fc.assert(
      fc.property(block, (readings) => {
        const found = allFindings({ readings })
        const standing = readings.filter(({ stands }) => stands)
        expect(Math.abs(found.reduce((pins, tag) => pins + tag.pins, 0) - chargedIn(standing))).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('what is not said', () => {
  const everyKind = (pins: number, stands: boolean): Reading[] => [
    firstBall(1, line(24, 12), { best: pearlLine(25, 13), ball: pins, stands }),
    firstBall(2, line(24, 12), { staying: staying(line(24, 12)), best: line(26, 12), slide: pins, stands }),
    firstBall(3, line(28, 14), {
      staying: staying(line(24, 12), { innovation: surprise(3, 0.9) }),
      best: line(24, 12),
      slide: pins,
      stands,
    }),
    firstBall(4, line(25, 12.5), {
      staying: staying(line(24, 12), { chargedPins: 2 * pins }),
      best: line(28, 14),
      target: pins,
      stands,
    }),
    spare(5, { ball: pins, line: 0 }, { stands }),
  ]

  it('is what costs little, all its throws together', () => {
    const costs = (pins: number) => firstBall(2, line(24, 12), { best: line(26, 12), slide: pins })
    expect(kinds([costs(LEAST_TAG_PINS)])).toEqual([])
    expect(kinds([costs(LEAST_TAG_PINS + 0.01)])).toEqual(['wrong-feet'])
  })

  it('is anything that does not stand when the physics is doubted', () => {
    expect(allFindings({ readings: everyKind(3, false) })).toEqual([])
    expect(allFindings({ readings: everyKind(3, true) }).length).toBeGreaterThan(4)
  })

  it('is more than three things a game', () => {
    expect(tags(everyKind(3, true)).length).toBe(MOST_TAGS_PER_GAME)
  })
})
