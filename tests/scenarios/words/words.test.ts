import { describe, expect, it } from 'vitest'
import { boardWords, moveWords } from '../../../src/scenarios/words/words.js'
import type { Aim } from '../../../src/sim/world/bowler/release.js'

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

  it('says half boards with their half', () => {
    expect([11, 11.5].map(boardWords)).toEqual(['11', '11.5'])
  })
})
