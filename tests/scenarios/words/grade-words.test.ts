import { describe, expect, it } from 'vitest'
import { gradeSentence, gradeWords, sameLineWarning } from '../../../src/scenarios/words/grade-words.js'
import type { GradeReason, PricedFairGrade } from '../../../src/sim/analysis/grade/grade-types.js'
import type { BlockState, Contact, Decision, ThrowRecord } from '../../../src/sim/world/block/types.js'
import { FULL_RACK, maskOf } from '../../../src/sim/world/pins/leaves.js'
import { bag, hybrid, plastic } from '../../sim/world/ball/bag-for-tests.js'

const line = (feetBoard: number, targetBoard: number, ballId = hybrid.id): Decision => ({
  ballId,
  aim: { feetBoard, targetBoard, speedStep: 0 },
  release: 'strike',
})

const thrown = (decision: Decision, contact: Contact): ThrowRecord =>
  ({
    spot: { phase: 'game', lane: 0, game: 1, frame: 3, ball: 1 },
    decision,
    standingBefore: FULL_RACK,
    standingAfter: maskOf([10]),
    observation: { arrowsBoard: 12, breakpointBoard: 8, breakpointFeet: 48, contact, speedMph: 16, standing: 512 },
  }) as ThrowRecord

const moment = (throws: readonly ThrowRecord[], standing = FULL_RACK): BlockState =>
  ({
    setup: { bag, bowler: { hand: 'right' } },
    spot: { phase: 'game', lane: 0, game: 1, frame: 4, ball: 1 },
    standing,
    throws,
  }) as unknown as BlockState

const reaction = (light: number, pocket: number) => ({
  contacts: [
    { contact: 'light', chance: light },
    { contact: 'pocket', chance: pocket },
    { contact: 'high', chance: 1 - light - pocket },
  ] as const,
  pocketAngleRadians: 0.08,
})
const TOO_LIGHT: GradeReason = { choice: reaction(0.5, 0.4), best: reaction(0.2, 0.6), lessonPins: 0 }

const grade = (givenAwayPins: number, best: Decision, reason: GradeReason | null = TOO_LIGHT): PricedFairGrade =>
  ({ givenAwayPins, best, reason }) as PricedFairGrade

const said = (...parts: Parameters<typeof gradeWords>) => gradeSentence(gradeWords(...parts))

describe('the line of a grade', () => {
  it('says what it cost, why, and the smallest change from the last line', () => {
    expect(said(grade(1.24, line(22, 12)), line(24, 12), moment([thrown(line(24, 12), 'light')]))).toBe(
      'Cost 1.2 pins. 8 at 48 ft and light: the same again is still light 5 times in 10. Try feet 2 right.',
    )
  })

  it('names the line it counts from, where another one was chosen', () => {
    const words = said(grade(1.24, line(22, 11)), line(26, 12), moment([thrown(line(24, 12), 'high')]))
    expect(words).toContain('8 at 48 ft and high: this is light 5 times in 10.')
    expect(words).toMatch(/Try 2 and 1 right, from the line of frame 3\.$/)
    expect(said(grade(1, line(24, 12)), line(26, 12), moment([thrown(line(24, 12), 'pocket')]))).toMatch(
      /Try the line of frame 3 again\.$/,
    )
  })

  it('says of a choice that costs nothing that it is as good as the best, and how often it hits the pocket', () => {
    const reason = { ...TOO_LIGHT, choice: TOO_LIGHT.best!, best: null }
    expect(said(grade(0, line(24, 12), reason), line(24, 12), moment([]))).toBe(
      'Good as the best. Hits the pocket 6 times in 10.',
    )
  })

  it('says so where the cost is a poorer lesson, and where it is the angle', () => {
    const lesson = { ...TOO_LIGHT, lessonPins: 0.9 }
    expect(said(grade(1, line(22, 12), lesson), line(24, 12), moment([]))).toContain('tells less about the oil')
    const angle = {
      choice: { ...reaction(0.2, 0.6), pocketAngleRadians: 0.06 },
      best: reaction(0.2, 0.6),
      lessonPins: 0,
    }
    expect(said(grade(1, line(22, 12), angle), line(24, 12), moment([]))).toContain(
      'Into the pocket at 3.4 deg; 4.6 carries better.',
    )
  })

  it('tells a spare the surer way in full where it takes another ball', () => {
    const best = { ...line(33, 20, plastic.id), release: 'spare' as const }
    expect(said(grade(0.8, best, null), line(24, 12), moment([], maskOf([10])))).toMatch(
      /^Cost 0\.8 pins\. Surer for the 10 pin: the .+, spare release, slide 33, target 20\.$/,
    )
  })

  it('gives way from its reason on, and never its figure, in 78, 60 and 20 columns', () => {
    const words = gradeWords(grade(1.24, line(22, 12)), line(24, 12), moment([thrown(line(24, 12), 'light')]))
    for (const columns of [78, 60, 40, 20]) {
      const told = gradeSentence(words, columns)
      expect(told.length).toBeLessThanOrEqual(columns)
      expect(told).toMatch(/^Cost 1\.2 pins\./)
    }
    expect(gradeSentence(words, 78)).toBe('Cost 1.2 pins. 8 at 48 ft and light: still light 5 in 10. Try feet 2 right.')
    expect(gradeSentence(words, 40)).toBe('Cost 1.2 pins. Try feet 2 right.')
  })
})

describe('the warning before a line is thrown again', () => {
  const costly = moment([thrown(line(24, 12), 'light')])
  it('comes where the line just cost three pins', () => {
    expect(sameLineWarning(costly, line(24, 12), () => 3.4)).toBe('This line just cost 3.4 pins.')
  })

  it('does not come of a cheaper line, of another one, at a spare or before any ball', () => {
    expect(sameLineWarning(costly, line(24, 12), () => 2.9)).toBe('')
    expect(sameLineWarning(costly, line(24, 11.5), () => 3.4)).toBe('')
    expect(sameLineWarning({ ...costly, standing: maskOf([7]) }, line(24, 12), () => 3.4)).toBe('')
    expect(sameLineWarning(moment([]), line(24, 12), () => 3.4)).toBe('')
  })
})
