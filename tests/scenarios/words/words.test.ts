import { describe, expect, it } from 'vitest'
import { boardWords, moveWords, observationWords, pinWords } from '../../../src/scenarios/words/words.js'
import type { Aim } from '../../../src/sim/world/bowler/release.js'
import { FULL_RACK, maskOf } from '../../../src/sim/world/pins/leaves.js'

const aim = (feetBoard: number, targetBoard: number): Aim => ({ feetBoard, targetBoard, speedStep: 0 })

describe('the words of a block', () => {
  // "2 and 1 left" for feet two and target one is how the trade says a move (common practice, no source).
  it.each([
    [aim(22, 11), aim(24, 12), 'right', '2 and 1 left'],
    [aim(22, 11), aim(20, 10), 'right', '2 and 1 right'],
    [aim(22, 11), aim(24, 12), 'left', '2 and 1 right'],
    [aim(22, 11), aim(22, 11), 'right', 'same line'],
    [aim(22, 11), aim(23.5, 11), 'right', 'feet 1.5 left'],
    [aim(22, 11), aim(22, 10), 'right', 'target 1 right'],
    [aim(22, 11), aim(24, 10), 'right', 'feet 2 left, target 1 right'],
  ] as const)('says the move %j to %j of a %s-hander', (from, to, hand, words) => {
    expect(moveWords(from, to, hand)).toBe(words)
  })

  it.each([
    [FULL_RACK, 0, 1, 'Strike.'],
    [maskOf([10]), 0, 2, 'Spare.'],
    [FULL_RACK, 0, 2, 'All ten.'],
    [FULL_RACK, FULL_RACK, 1, expect.stringMatching(/^No pins/)],
    [FULL_RACK, maskOf([10]), 1, expect.stringMatching(/^9 pins; it leaves the 10 ?pin/)],
    [maskOf([3, 6, 10]), maskOf([10]), 2, expect.stringMatching(/^2 pins; still up: /)],
  ])('says what pins %d to %d on ball %d are', (before, after, ball, words) => {
    expect(pinWords(before, after, ball)).toEqual(words)
  })

  it('says where a ball crossed the arrows, or that it never came so far', () => {
    const seen = {
      breakpointBoard: 40,
      breakpointFeet: 12,
      contact: 'gutter',
      speedMph: 17,
      standing: FULL_RACK,
    } as const
    expect(observationWords({ ...seen, arrowsBoard: 39 }, FULL_RACK)).toMatch(/^39 at the arrows, /)
    expect(observationWords({ ...seen, arrowsBoard: 40 }, FULL_RACK)).toMatch(/^off the lane before the arrows, /)
    expect(observationWords({ ...seen, arrowsBoard: 0 }, FULL_RACK)).toMatch(/^off the lane before the arrows, /)
  })

  it('says half boards with their half', () => {
    expect([11, 11.5].map(boardWords)).toEqual(['11', '11.5'])
  })
})
