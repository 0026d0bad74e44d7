import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MOST_TAGS_PER_GAME, tagCandidates, tagsOf } from '../../../../../src/sim/analysis/debrief/findings/tags.js'
import type { Reading } from '../../../../../src/sim/analysis/debrief/reading/reading.js'
import { houseSetup } from '../block-for-tests.js'
import {
  firstBall,
  line,
  pearlLine,
  recordOf,
  saves,
  spare,
  staying,
  surprise,
  TOO_CLOSE,
} from '../readings-for-tests.js'

// The findings and their tests by counterfactual are common practice of coaches put into figures; no source for the words.
// Where a case says what is right, that follows from how the case was built.

const tags = (readings: readonly Reading[]) => tagsOf({ setup: houseSetup, readings })
const kinds = (readings: readonly Reading[]) => tags(readings).map(({ kind }) => kind)

const noShares = { ball: 0, target: 0, feet: 0, speed: 0 }

describe('findings about one choice', () => {
  it('names the ball where its best line is behind another’s', () => {
    const reading = firstBall(3, line(24, 12), {
      nearest: saves(pearlLine(25, 13), 2.4),
      ballLostPins: 2.1,
      shares: { ...noShares, ball: 2.4 },
    })
    const [tag, ...others] = tags([reading])
    expect(others).toEqual([])
    expect(tag).toMatchObject({ kind: 'wrong-ball', frames: [3], throws: [2] })
    expect(tag.pins).toBeCloseTo(2.1, 9)
    expect(tag.words).toContain('no line of the asymmetric hybrid was as good as one of the weak pearl')
  })

  it.each([
    ['feet', 'wrong-feet'],
    ['target', 'wrong-target'],
    ['speed', 'wrong-speed'],
  ] as const)('names the %s where they alone gain it', (part, kind) => {
    const allThree = { ...line(26, 13), aim: { feetBoard: 26, targetBoard: 13, speedStep: 1 as const } }
    const reading = firstBall(2, line(24, 12), {
      nearest: saves(allThree, 1.8),
      shares: { ...noShares, [part]: 1.7, target: part === 'target' ? 1.7 : 0.1 },
    })
    expect(kinds([reading])).toEqual([kind])
  })

  it('names the line where feet and target only gain together', () => {
    const reading = firstBall(2, line(24, 12), {
      nearest: saves(line(26, 13), 1.8),
      shares: { ...noShares, feet: 0.9, target: 0.9 },
    })
    const [tag] = tags([reading])
    expect(tag.kind).toBe('wrong-line')
    expect(tag.words).toContain('feet 2 boards left and target 1 board left')
  })

  it('names no part alone that only gains what another spoils', () => {
    const reading = firstBall(2, line(24, 12), {
      nearest: saves(line(27, 15.5), 1.5),
      shares: { ...noShares, feet: -2.5, target: 4 },
    })
    expect(kinds([reading])).toEqual(['wrong-line'])
  })

  it('names the one part that differs, whichever ball is best', () => {
    const reading = firstBall(2, line(24, 12), {
      nearest: saves(pearlLine(27, 14), 1.8, false),
      nearestSameBall: saves(line(24, 14), 1.5),
      shares: noShares,
    })
    expect(kinds([reading])).toEqual(['wrong-target'])
  })

  it('says left and right as a left-hander sees it', () => {
    const leftHanded = { ...houseSetup, bowler: { ...houseSetup.bowler, hand: 'left' as const } }
    const reading = firstBall(2, line(24, 12), { nearest: saves(line(26, 13), 1.8), shares: noShares })
    const [tag] = tagsOf({ setup: leftHanded, readings: [reading] })
    expect(tag.words).toContain('feet 2 boards right and target 1 board right')
  })

  it('tells spares lost by the ball from spares lost by the line', () => {
    expect(kinds([spare(1, { ball: 2, line: 0.1 })])).toEqual(['spare-ball'])
    expect(kinds([spare(1, { ball: 0.1, line: 2 })])).toEqual(['spare-line'])
    const [both] = tags([spare(1, { ball: 2, line: 0 }), spare(4, { ball: 1, line: 0 })])
    expect(both).toMatchObject({ kind: 'spare-ball', frames: [1, 4] })
    expect(both.pins).toBeCloseTo(3 - 2 * TOO_CLOSE, 9)
  })

  it('points out a throw that would have taught more for the same pins', () => {
    const reading = firstBall(1, line(24, 12), { lessonLostPins: 1.2 })
    const [tag] = tags([reading])
    expect(tag.kind).toBe('skipped-a-probe')
    expect(tag.pins).toBeCloseTo(1.2 - TOO_CLOSE, 9)
  })
})

describe('findings about moves', () => {
  const stale = (frame: number, pins: number) =>
    firstBall(frame, line(24, 12), {
      staying: staying(line(24, 12), { lostPins: pins }),
      nearest: saves(line(26, 13), pins),
      shares: { ...noShares, feet: pins },
    })
  const good = (frame: number) => firstBall(frame, line(24, 12), { staying: staying(line(24, 12)) })

  it('says that a move came too late and sums what the wait cost', () => {
    const [tag, ...others] = tags([good(3), stale(4, 0.8), stale(5, 1.4), stale(6, 2)])
    expect(others).toEqual([])
    expect(tag).toMatchObject({ kind: 'moved-too-late', frames: [4, 5, 6] })
    // no more than was charged: each throw's loss less what is too close to call
    expect(tag.pins).toBeCloseTo(4.2 - 3 * TOO_CLOSE, 9)
    expect(tag.words).toContain('Frames 4 to 6')
  })

  it('does not call it too late where the line never was good', () => {
    expect(kinds([stale(4, 0.8), stale(5, 1.4)])).toEqual(['wrong-feet'])
  })

  it('says that a change was missed where the throw before had shown it', () => {
    const first = stale(4, 1.5)
    const told = { ...first, staying: staying(line(24, 12), { lostPins: 1.5, innovation: surprise(2.5, 0.1) }) }
    const [tag] = tags([good(3), told])
    expect(tag.kind).toBe('missed-a-change')
    expect(tag.words).toContain('2.5 boards higher than was to be expected, and most of that was the lane')
  })

  const movedOff = (innovation: ReturnType<typeof surprise>, to = line(26, 13)) =>
    firstBall(5, to, {
      staying: staying(line(24, 12), {
        record: recordOf(line(24, 12), 14),
        saved: { pins: 1.6, standardErrorPins: 0.05 },
        innovation,
      }),
      nearest: saves(line(24, 12), 1.6),
      shares: noShares,
    })

  it('says that the lane was blamed for a bad throw', () => {
    const [tag, ...others] = tags([movedOff(surprise(3, 0.9))])
    expect(others).toEqual([])
    expect(tag).toMatchObject({ kind: 'blamed-the-lane', pins: 1.6 - TOO_CLOSE })
    expect(tag.words).toContain('it crossed the arrows 2 boards left of the target')
  })

  it('does not say so of a move that did not answer the miss, nor of a surprise that was the lane', () => {
    // moved right after a high ball: that makes it higher still
    expect(kinds([movedOff(surprise(3, 0.9), line(22, 11))])).toEqual(['moved-too-early'])
    expect(kinds([movedOff(surprise(3, 0.2))])).toEqual(['moved-too-early'])
    expect(kinds([movedOff(surprise(0.2, 0.9))])).toEqual(['moved-too-early'])
  })

  const moved = (to: ReturnType<typeof line>, needed: ReturnType<typeof line>) =>
    firstBall(6, to, {
      staying: staying(line(24, 12), { lostPins: 3, saved: { pins: -1, standardErrorPins: 0.05 }, stands: false }),
      nearest: saves(needed, 1.2),
      shares: { ...noShares, feet: 0.6, target: 0.6 },
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

describe('what is not said', () => {
  const everyKind = (pins: number, stands: boolean): Reading[] => [
    firstBall(1, line(24, 12), {
      nearest: saves(pearlLine(25, 13), pins, stands),
      ballLostPins: pins,
      shares: noShares,
    }),
    firstBall(2, line(24, 12), {
      staying: staying(line(24, 12), { lostPins: pins }),
      nearest: saves(line(26, 13), pins, stands),
      shares: { ...noShares, feet: pins },
    }),
    firstBall(3, line(28, 14), {
      staying: staying(line(24, 12), {
        saved: { pins, standardErrorPins: 0.05 },
        stands,
        innovation: surprise(3, 0.9),
      }),
    }),
    firstBall(4, line(25, 12.5), {
      staying: staying(line(24, 12), { lostPins: 2 * pins }),
      nearest: saves(line(28, 14), pins, stands),
      shares: noShares,
    }),
    spare(5, { ball: pins, line: 0 }, { stands }),
  ]

  it('is anything that saves no more than is too close to call', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: TOO_CLOSE, noNaN: true }), (pins) => {
        expect(tagCandidates({ setup: houseSetup, readings: everyKind(pins, true) })).toEqual([])
      }),
    )
  })

  it('is a sound choice: all its throws together cost half a pin or less', () => {
    const costs = (pins: number) => firstBall(2, line(24, 12), { nearest: saves(line(26, 13), pins), shares: noShares })
    expect(kinds([costs(TOO_CLOSE + 0.5)])).toEqual([])
    expect(kinds([costs(TOO_CLOSE + 0.51)])).toEqual(['wrong-line'])
  })

  it('is anything that does not stand when the physics is doubted', () => {
    expect(tagCandidates({ setup: houseSetup, readings: everyKind(3, false) })).toEqual([])
    expect(tagCandidates({ setup: houseSetup, readings: everyKind(3, true) }).length).toBeGreaterThan(4)
  })

  it('is more than three things a game, and never two about one throw', () => {
    const chosen = tags(everyKind(3, true))
    expect(chosen.length).toBe(MOST_TAGS_PER_GAME)
    const told = chosen.flatMap(({ throws }) => throws)
    expect(new Set(told).size).toBe(told.length)
  })

  it('is praise or blame of the person', () => {
    const words = tagCandidates({ setup: houseSetup, readings: everyKind(3, true) }).map(
      (one) => one.tell(one.parts).words,
    )
    for (const one of words)
      expect(one).not.toMatch(/\b(you|your|mistake|wrong|bad|poor|stupid|well done|great|good job)\b/i)
  })
})
