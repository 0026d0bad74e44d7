import { describe, expect, it } from 'vitest'
import { changeWords, framesWords, sinceLastWords } from '../../../src/scenarios/words/change-words.js'
import { boardWords, moveWords } from '../../../src/scenarios/words/words.js'
import type { Aim } from '../../../src/sim/world/bowler/release.js'
import { bag, hybrid, weakPearl } from '../../sim/world/ball/bag-for-tests.js'

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

  it('says what else than the line changes, and that the line stays', () => {
    const now = { ballId: hybrid.id, aim: aim(22, 11), release: 'strike' } as const
    const pearl = { ...now, ballId: weakPearl.id }
    expect(changeWords(now, pearl, bag, 'right')).toBe(`the ${weakPearl.name}`)
    expect(sinceLastWords(now, pearl, bag, 'right')).toBe(`the ${weakPearl.name}, same line`)
    expect(sinceLastWords(now, now, bag, 'right')).toBe('same line')
    const firmer = { ...pearl, aim: { ...aim(24, 12), speedStep: 1 as const } }
    expect(sinceLastWords(now, firmer, bag, 'right')).toBe(`the ${weakPearl.name}, 2 and 1 left, firmer`)
    expect(sinceLastWords(firmer, pearl, bag, 'right')).toBe('2 and 1 right, usual speed')
  })

  it('names frames one by one, and a run by its ends', () => {
    expect([[4], [4, 5], [4, 5, 6], [4, 6, 9]].map(framesWords)).toEqual([
      'Frame 4',
      'Frames 4 and 5',
      'Frames 4 to 6',
      'Frames 4, 6 and 9',
    ])
  })

  it('says half boards with their half', () => {
    expect([11, 11.5].map(boardWords)).toEqual(['11', '11.5'])
  })
})
