import { describe, expect, it, vi } from 'vitest'
import { beginScenario } from '../../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { debriefOf } from '../../../../src/scenarios/reports/debrief/debrief.js'
import { debriefReport } from '../../../../src/scenarios/reports/debrief/debrief-report.js'
import { recordOf } from '../../../../src/scenarios/store/record.js'
import { stateBefore } from '../../../../src/sim/analysis/debrief/moments.js'
import { searchFair } from '../../../../src/sim/analysis/grade/fair-search.js'
import { searchFairSpare } from '../../../../src/sim/analysis/grade/fair-spare.js'
import { fullInformationBest } from '../../../../src/sim/analysis/oracle/oracle.js'
import { choose } from '../../../../src/sim/analysis/policies/policies.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import type { Decision } from '../../../../src/sim/world/block/types.js'

vi.mock('../../../../src/sim/analysis/grade/fair-search.js', { spy: true })
vi.mock('../../../../src/sim/analysis/grade/fair-spare.js', { spy: true })

const THROWS = 7

describe('a debrief', async () => {
  const loaded = await loadScenario('house-forty')
  const scenario = { ...loaded, setup: { ...loaded.setup, bag: loaded.setup.bag.slice(2, 4), practiceThrows: 1 } }
  let state = beginScenario(scenario, 'one pass')
  while (state.throws.length < THROWS) state = advance(state, choose('thumb', state))
  const states = Array.from({ length: THROWS }, (_, index) => stateBefore(state, index)).concat(state)
  vi.clearAllMocks()
  const debrief = debriefOf({ scenario, states })
  const searches = vi.mocked(searchFair).mock.calls.length + vi.mocked(searchFairSpare).mock.calls.length

  it('searches once for every graded choice', () => {
    const graded = debrief.throws.filter(({ fair }) => fair !== null)
    expect(graded).toHaveLength(THROWS - 1)
    expect(searches).toBe(graded.length)
  })

  it('searches for nothing that is worked out already', () => {
    vi.clearAllMocks()
    const again = debriefOf({ scenario, states }, { account: debrief.account })
    expect(vi.mocked(searchFair).mock.calls.length + vi.mocked(searchFairSpare).mock.calls.length).toBe(0)
    expect(again).toEqual(debrief)
  })

  it('names one best if the oil is seen: the one that play, screen and report name too', () => {
    const record = recordOf(loaded, state)
    const report = debriefReport(record, debrief)
    const told = ({ ballId, aim, release }: Decision) => ({
      ball: ballId,
      feet: aim.feetBoard,
      target: aim.targetBoard,
      release,
    })
    debrief.throws.forEach(({ account: { graded } }, index) => {
      if (!graded) return
      const played = fullInformationBest(states[index])
      expect(graded.bestKnown).toEqual(played)
      expect(report.throws[index].known!.best).toMatchObject(told(played))
      expect(report.throws[index].fair!.best).toMatchObject(told(graded.grade.best))
      expect(report.throws[index].fair!.givenAwayPins).toBeCloseTo(graded.ledger.givenAwayPins, 3)
    })
  })
})
