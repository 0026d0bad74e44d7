import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { readDecision } from '../../../src/scenarios/plain/read-decision.js'
import type { Decision } from '../../../src/sim/world/block/types.js'

const { setup } = await loadScenario('house-forty')
const standing: Decision = {
  ballId: 'asymmetric-hybrid',
  aim: { feetBoard: 22, targetBoard: 11, speedStep: 0 },
  release: 'strike',
}
const read = (typed: string, hand: 'right' | 'left' = 'right') => readDecision(typed, standing, setup.bag, hand)
const thrown = (change: Partial<Decision>, aim: Partial<Decision['aim']> = {}) => ({
  kind: 'throw',
  decision: { ...standing, ...change, aim: { ...standing.aim, ...aim } },
})

describe('reading a typed decision', () => {
  it.each([
    ['', thrown({})],
    ['   ', thrown({})],
    ['ball 1', thrown({ ballId: 'sanded-asymmetric' })],
    ['ball weak-pearl', thrown({ ballId: 'weak-pearl' })],
    ['ball 3 feet 24 target 12 speed usual', thrown({}, { feetBoard: 24, targetBoard: 12 })],
    ['t 10.5, f 21', thrown({}, { feetBoard: 21, targetBoard: 10.5 })],
    ['s softer', thrown({}, { speedStep: -1 })],
    ['speed f', thrown({}, { speedStep: 1 })],
    ['release spare', thrown({ release: 'spare' })],
    ['2 and 1 left', thrown({}, { feetBoard: 24, targetBoard: 12 })],
    ['2 and 1 right ball 6', thrown({ ballId: 'plastic-spare' }, { feetBoard: 20, targetBoard: 10 })],
    ['?', { kind: 'help' }],
    ['QUIT', { kind: 'quit' }],
  ])('%j', (typed, answer) => {
    expect(read(typed)).toEqual(answer)
  })

  it('counts a left-hander’s move left towards their own edge', () => {
    expect(read('2 and 1 left', 'left')).toEqual(thrown({}, { feetBoard: 20, targetBoard: 10 }))
  })

  it.each([
    ['sheep', /"sheep" is not something to decide/],
    ['ball 9', /no ball "9"; the bag has 1 to 6/],
    ['feet', /What should feet be\?/],
    ['feet left', /"left" is not a board/],
    ['speed fast', /softer, usual or firmer/],
    ['release slow', /strike or spare/],
    ['constructor 3', /not something to decide/],
    ['constructor', /not something to decide/],
    ['two and 1 left', /"two" is not a count of boards/],
  ])('%j is answered with a sentence', (typed, sentence) => {
    expect(read(typed)).toEqual({ kind: 'unclear', sentence: expect.stringMatching(sentence) })
  })

  it('reads back any decision said in full', () => {
    const half = (low: number, high: number) => fc.integer({ min: low * 2, max: high * 2 }).map((n) => n / 2)
    fc.assert(
      fc.property(
        half(8, 46),
        half(2, 30),
        fc.integer({ min: 0, max: 5 }),
        fc.constantFrom('softer', 'usual', 'firmer'),
        (feet, target, ball, speed) => {
          const answer = read(`speed ${speed} target ${target} ball ${ball + 1} feet ${feet}`)
          expect(answer).toEqual(
            thrown(
              { ballId: setup.bag[ball].id },
              {
                feetBoard: feet,
                targetBoard: target,
                speedStep: ({ softer: -1, usual: 0, firmer: 1 } as const)[speed as 'usual'],
              },
            ),
          )
        },
      ),
      { numRuns: 100 },
    )
  })

  it('answers any line at all', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => void read(typed)),
      { numRuns: 500 },
    )
  })
})
