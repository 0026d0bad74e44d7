import { describe, expect, it } from 'vitest'
import { readPracticeAnswer } from '../../../src/scenarios/plain/read-practice-answer.js'
import { call, decide, lengthRead, shapeRead, throwOrLane } from '../../sim/analysis/practice/positions-for-tests.js'

describe('a typed answer', () => {
  it('is a number and how sure, for a decision', () => {
    const position = decide('d', [0, 1, 2])
    expect(readPracticeAnswer('2 80', position)).toEqual({
      kind: 'answer',
      answer: { kind: 'choice', place: 1 },
      sureShare: 0.8,
    })
    expect(readPracticeAnswer(' 3 ', position)).toEqual({
      kind: 'answer',
      answer: { kind: 'choice', place: 2 },
      sureShare: null,
    })
    for (const typed of ['4', '0', '1.5', '1 20', '1 80 3', 'left', ''])
      expect(readPracticeAnswer(typed, position).kind).toBe('unclear')
  })

  it('is two ends of a range, or shares, or one share', () => {
    expect(readPracticeAnswer('16.5 to 18', call([17]))).toMatchObject({
      answer: { kind: 'interval', low: 16.5, high: 18 },
    })
    expect(readPracticeAnswer('38 41', lengthRead([40], [40]))).toMatchObject({ answer: { low: 38, high: 41 } })
    expect(readPracticeAnswer('18 16', call([17])).kind).toBe('unclear')
    expect(readPracticeAnswer('20, 50, 30 %', shapeRead([1, 0, 0]))).toMatchObject({
      answer: { kind: 'shares', shares: [0.2, 0.5, 0.3] },
    })
    expect(readPracticeAnswer('20 50 40', shapeRead([1, 0, 0])).kind).toBe('unclear')
    expect(readPracticeAnswer('70', throwOrLane(0.5))).toMatchObject({ answer: { kind: 'share', share: 0.7 } })
    expect(readPracticeAnswer('170', throwOrLane(0.5)).kind).toBe('unclear')
  })

  it('may be a word', () => {
    expect(readPracticeAnswer('quit', call([17])).kind).toBe('quit')
    expect(readPracticeAnswer('?', call([17])).kind).toBe('help')
    expect(readPracticeAnswer('bag', call([17])).kind).toBe('bag')
  })
})
