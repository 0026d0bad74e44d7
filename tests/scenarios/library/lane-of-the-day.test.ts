import { describe, expect, it } from 'vitest'
import { localDate } from '../../../src/scenarios/files/text/local-time.js'
import { laneOfTheDay } from '../../../src/scenarios/library/lane-of-the-day.js'
import { builtInNames, builtInScenario } from '../../../src/scenarios/library/library.js'
import { laneOfToday } from '../../../src/scenarios/store/today.js'

const RULES = '0123456789abcdef'
const dates = Array.from({ length: 730 }, (_, day) => new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10))

describe('the lane of the day', () => {
  it('comes from the date and the lane rules, and from nothing else', () => {
    const once = laneOfTheDay('2026-11-27', RULES)
    expect(laneOfTheDay('2026-11-27', RULES)).toEqual(once)
    expect(laneOfTheDay('2026-11-28', RULES).seed).not.toBe(once.seed)
    expect(laneOfTheDay('2026-11-27', 'fedcba9876543210').seed).not.toBe(once.seed)
    expect(once.seed).toContain('2026-11-27')
  })

  it('has another luck each day, and in two years comes to every lane that all bowl with one bag', () => {
    const lanes = dates.map((date) => laneOfTheDay(date, RULES))
    expect(new Set(lanes.map(({ seed }) => seed)).size).toBe(dates.length)
    const open = builtInNames().filter((name) => builtInScenario(name)?.takeBalls === undefined)
    expect([...new Set(lanes.map(({ scenarioName }) => scenarioName))].sort()).toEqual([...open].sort())
    for (const { scenarioName, title } of lanes) expect(builtInScenario(scenarioName)?.title).toBe(title)
  })

  it('goes by the date that clocks here show', () => {
    const now = new Date(2026, 10, 27, 23, 59)
    expect(localDate(now)).toBe('2026-11-27')
    expect(laneOfToday(now).date).toBe('2026-11-27')
    expect(laneOfToday(new Date(2026, 10, 28, 0, 1)).date).toBe('2026-11-28')
    expect(() => laneOfTheDay('27 November', RULES)).toThrow(/written 2026-11-27/)
  })
})
