import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { workedDebrief } from '../../../src/scenarios/reports/debrief/worked-debrief.js'
import { keepAccount } from '../../../src/scenarios/store/kept-account.js'
import { recordOf } from '../../../src/scenarios/store/record.js'
import { replayKnown, replayRecord } from '../../../src/scenarios/store/replay.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { madeUpAccount } from '../../tui/fixtures.js'

const THROWS = 9

async function played(name: string) {
  const scenario = await loadScenario(name)
  let state = beginScenario(scenario, 'known')
  for (let index = 0; index < THROWS; index++) state = advance(state, playerView(state)!.suggestion)
  return { state, record: recordOf(scenario, state) }
}

/** A block but for the pins that the ball touched, which nobody who knows only the leaves can tell. */
const withoutTouched = ({ lanes, throws, fieldThrows, balls, spot, standing }: BlockState) => ({
  lanes,
  fieldThrows,
  balls,
  spot,
  standing,
  throws: throws.map(({ truth: { touched: _touched, ...truth }, ...thrown }) => ({ ...thrown, truth })),
})

describe('a record whose results are known', () => {
  it.each(['house-forty', 'left-house'])('plays again to the same bits without its racks: %s', async (name) => {
    const { record } = await played(name)
    const thrown = replayRecord(record, name).states
    const known = replayKnown(record, name).states
    expect(known.map(withoutTouched)).toEqual(thrown.map(withoutTouched))
    expect(known.at(-1)!.throws.every(({ truth }) => truth.touched === null || truth.leftLaneFeet < Infinity)).toBe(
      true,
    )
  })

  it('is taken for known only as it was when it was worked out', async () => {
    const { state, record } = await played('house-forty')
    const folder = mkdtempSync(join(tmpdir(), 'dryboard-known-'))
    const account = madeUpAccount(state)
    await keepAccount(folder, record, { grades: account.throws.map(({ graded }) => graded?.grade ?? null), account })
    const work = { path: 'block.json', folder, reached: () => {} }
    expect((await workedDebrief(record, work)).debrief.account).toEqual(account)
    const last = record.decisions.at(-1)!
    const edited = {
      ...record,
      decisions: [...record.decisions.slice(0, -1), { ...last, standing: last.standing ^ 1 }],
    }
    await expect(workedDebrief(edited, work)).rejects.toThrow('the file was changed by hand')
  })
})
