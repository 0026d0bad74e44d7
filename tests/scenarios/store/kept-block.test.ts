import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { keptBlock } from '../../../src/scenarios/store/kept-block.js'
import { recordOf } from '../../../src/scenarios/store/record.js'
import { EarlierModelError, replayRecord } from '../../../src/scenarios/store/replay.js'
import { keptBlockLines } from '../../../src/scenarios/words/kept-block-lines.js'
import { choose } from '../../../src/sim/analysis/policies/policies.js'
import { advance } from '../../../src/sim/world/block/advance.js'

async function played(name: string) {
  const scenario = await loadScenario(name)
  const states = [beginScenario(scenario, 'kept')]
  for (let state = states[0]!; state.spot; states.push(state)) state = advance(state, choose('stay', state))
  const ended = states.at(-1)!
  return { scenario, ended, record: recordOf(scenario, ended) }
}

describe('a block read off its record', () => {
  it.each(['house-forty', 'unlike-pair', 'current-frame-sport'])('has the score that was bowled (%s)', async (name) => {
    const { ended, record } = await played(name)
    const kept = keptBlock(record, 'kept.json')
    expect(kept.balls).toEqual(ended.balls)
    expect(kept.throws.map(({ standingBefore }) => standingBefore)).toEqual(
      ended.throws.map(({ standingBefore }) => standingBefore),
    )
    expect(kept.throws.map(({ game, frame }) => [game, frame])).toEqual(
      ended.throws.map(({ spot }) => [spot.game, spot.frame]),
    )
  })

  it('is told where the model has changed since, with the score and every throw', async () => {
    const { scenario, ended, record } = await played('house-forty')
    const [first, ...rest] = record.decisions
    const earlier = { ...record, model: '0123456789abcdef', decisions: [{ ...first!, standing: 1023 }, ...rest] }
    expect(() => replayRecord(earlier, 'old.json')).toThrow(EarlierModelError)
    expect(() => replayRecord({ ...earlier, model: record.model }, 'old.json')).not.toThrow(EarlierModelError)
    const { scoring, bag } = scenario.setup
    const lines = keptBlockLines({ scoring, bag, ...keptBlock(earlier, 'old.json') })
    expect(lines.join(' ')).toContain('has changed since this block was played')
    expect(lines.filter((line) => /^(practice )?\d/.test(line))).toHaveLength(ended.throws.length)
    expect(lines.some((line) => line.startsWith('Total '))).toBe(true)
  })
})
