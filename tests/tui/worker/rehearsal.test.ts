import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { gradeFair } from '../../../src/sim/analysis/grade/fair-grade.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import { rehearsal } from '../../../src/tui/worker/rehearsal.js'

describe('a rehearsal', () => {
  it('ends, and leaves every later grade as it would have been without', async () => {
    const { setup } = await loadScenario('house-forty')
    const graded = () => {
      const block = beginBlock({ ...setup, bag: setup.bag.slice(3, 4), practiceThrows: 0 }, 'rehearsed')
      return gradeFair(block, playerView(block)!.suggestion)
    }
    const before = graded()
    const steps = [...rehearsal(3)]
    expect(steps).toHaveLength(3)
    expect(graded()).toStrictEqual(before)
  })
})
