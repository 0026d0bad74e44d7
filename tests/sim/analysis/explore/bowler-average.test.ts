import { mean, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { averageOf, averageSteps, thumbGame } from '../../../../src/sim/analysis/explore/bowler-average.js'

describe('the average of a bowler', () => {
  it('is the mean of its games, with the usual interval of a mean', () => {
    const scores = [187, 203, 156, 224, 178, 199]
    const { games, mean: centre, halfWidth } = averageOf(scores)
    // simple-statistics, a general library, for mean and deviation; 1.96 is the two-sided 95 % point of any normal table.
    expect(games).toBe(6)
    expect(centre).toBeCloseTo(mean(scores), 10)
    expect(halfWidth).toBeCloseTo((1.96 * sampleStandardDeviation(scores)) / Math.sqrt(6), 10)
    expect(averageOf([150])).toEqual({ games: 1, mean: 150, halfWidth: null })
  })

  it('comes game by game, each of them one game by rule of thumb under a seed of its own', async () => {
    const { setup } = await loadScenario('house-forty')
    const steps = averageSteps(setup, 2)
    const first = steps.next()
    const last = steps.next()
    expect(first).toMatchObject({ done: false, value: { games: 1, halfWidth: null } })
    expect(last).toMatchObject({ done: true, value: { games: 2 } })
    const scores = [thumbGame(setup, 'average-1'), thumbGame(setup, 'average-2')]
    expect(last.value.mean).toBe((scores[0]! + scores[1]!) / 2)
  })
})
