import { expect, it } from 'vitest'
import { entryScenario, isEntryScenario } from '../../../src/scenarios/contest/entry/entry-scenario.js'
import { rateLimit } from '../../../src/scenarios/contest/host/rate.js'
import { sealed } from './contest-for-tests.js'

it('lets entrants choose of the bowler what the rules let them, and believes nothing else', () => {
  const [set, hand, level] = (['as-set', 'own-hand', 'own-hand-and-level'] as const).map(
    (bowlers) => sealed({ bowlers }).opened,
  )
  const left = entryScenario(hand!, { hand: 'left' })
  expect(left.setup.bowler.hand).toBe('left')
  expect(() => entryScenario(set!, { hand: 'left' })).toThrow(
    'Autumn contest: all play the bowler that is set; leave --hand out.',
  )
  expect(() => entryScenario(hand!, { level: '180' })).toThrow('all play at the same level; leave --level out.')
  expect(() => entryScenario(level!, { level: 'no-such' })).toThrow(/level: found "no-such"; allowed is one of/)
  const lower = entryScenario(level!, { level: '160', hand: 'left' })
  const believed = (opened: typeof set) => [left, lower].map(({ data }) => isEntryScenario(opened!, data))
  expect([believed(set), believed(hand), believed(level)]).toEqual([
    [false, false],
    [true, false],
    [true, true],
  ])
  const { data } = level!.scenario
  const own = { ...lower.data, bowler: { ...lower.data.bowler, spareSystem: 'straight-on' } } as typeof data
  expect(isEntryScenario(level!, own)).toBe(false)
  expect(isEntryScenario(level!, { ...data, games: 2 })).toBe(false)
  expect(isEntryScenario(level!, { ...data, posted: 'nothing' })).toBe(false)
})

// The token bucket by its definition: so many at once, then so many a second.
it('lets a client ask so many at once and so many a second, each for itself', () => {
  let now = 0
  const allowed = rateLimit({ burst: 3, aSecond: 2 }, () => now)
  expect([1, 2, 3, 4].map(() => allowed('a'))).toEqual([true, true, true, false])
  expect(allowed('b')).toBe(true)
  now = 500
  expect([1, 2].map(() => allowed('a'))).toEqual([true, false])
  now = 60_000
  expect([1, 2, 3, 4].map(() => allowed('a'))).toEqual([true, true, true, false])
})
