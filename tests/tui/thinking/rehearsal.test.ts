import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/load.js'
import { beginBlock } from '../../../src/sim/block/begin.js'
import { playerView } from '../../../src/sim/decision/player-view.js'
import { gradeFair } from '../../../src/sim/fair/fair-grade.js'
import { rehearsal } from '../../../src/tui/thinking/rehearsal.js'

describe('a rehearsal', () => {
  it('ends, and leaves every later grade as it would have been without', async () => {
    const { setup } = await loadScenario('house-forty')
    const graded = () => {
      const block = beginBlock({ ...setup, practiceThrows: 0 }, 'rehearsed')
      return gradeFair(block, playerView(block)!.suggestion)
    }
    const before = graded()
    const steps = [...rehearsal()]
    expect(steps.length).toBeGreaterThan(3)
    expect(graded()).toStrictEqual(before)
  }, 30_000)
})
