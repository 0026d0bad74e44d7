import { describe, expect, it } from 'vitest'
import { stateBefore } from '../../../../src/sim/analysis/debrief/moments.js'
import { pairSetup, thumbStates } from './block-for-tests.js'

describe('a block cut back to one of its throws', () => {
  it('is the state that throw was decided in, on a pair with a field, practice and spares', () => {
    const states = thumbStates(pairSetup, 'cut back', 16)
    const ended = states[states.length - 1]
    for (let index = 0; index < ended.throws.length; index++) {
      const cut = stateBefore(ended, index)
      expect(cut).toEqual(states[index])
      // the same lane states, not copies, so that what was worked out for them in play is found again
      for (const lane of cut.lanes.keys()) expect(cut.lanes[lane]).toBe(states[index].lanes[lane])
    }
  })

  it('says so when there is no such throw', () => {
    const states = thumbStates(pairSetup, 'cut back', 2)
    expect(() => stateBefore(states[2], 7)).toThrow('The block has 2 throws, so none is number 8.')
  })
})
