import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { carryDistribution, newCarryDistribution } from '../../../../src/sim/analysis/carry/carry-table.js'
import { averageWeights, oddsOf, pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { weightsOfNextBall } from '../../../../src/sim/analysis/value/score-state.js'
import { lookUpWorth } from '../../../../src/sim/analysis/value/value-table.js'
import { arcTangent } from '../../../../src/sim/exact-math.js'
import { boardToMetres } from '../../../../src/sim/units.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { countPins, FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'

const bowler = levelProfile('200')
const tenPin = { bowler, scoring: 'ten-pin' } as const
const frame = { bowler, scoring: 'current-frame' } as const

describe('pricing', () => {
  it('prices an entry as the carry table’s leaves are priced one by one', () => {
    const chances = newCarryDistribution()
    // nodes of the table's grid, where nothing is interpolated
    const entry = fc.record({
      board: fc.integer({ min: 8, max: 200 }).map((k) => -4 + k * 0.125),
      tangent: fc.integer({ min: 0, max: 10 }).map((k) => -0.035 + k * 0.0175),
      step: fc.constantFrom(-1, 0, 1),
      setup: fc.constantFrom(tenPin, frame),
    })
    fc.assert(
      fc.property(entry, ({ board, tangent, step, setup }) => {
        const pricing = pricingOf(setup)
        const speed = bowler.strike.speedMetresPerSecond - 1.25 + step * bowler.speedStepMetresPerSecond
        carryDistribution(boardToMetres(20) - boardToMetres(board), arcTangent(tangent), speed, chances)
        let worth = 0
        for (let k = 0; k < chances.count; k++) worth += chances.chance[k] * pricing.worthOfLeave(chances.mask[k])
        expect(lookUpWorth(pricing.tables[step + 1], boardToMetres(board), tangent, 0)).toBeCloseTo(worth, 9)
      }),
      { numRuns: 200 },
    )
  })

  it('makes a strike the best that can happen, better than the average frame, and a gutter ball worse', () => {
    const { worthOfLeave, gutterWorth } = pricingOf(tenPin)
    for (let mask = 1; mask <= FULL_RACK; mask++) expect(worthOfLeave(mask)).toBeLessThan(worthOfLeave(0))
    expect(worthOfLeave(0)).toBeGreaterThan(0)
    expect(gutterWorth).toBeLessThan(0)
  })

  // rules of play: after two strikes in the tenth the last ball earns its own pins and nothing more
  it('counts only its own pins for the last fill ball', () => {
    const balls = [...Array.from({ length: 9 }, () => [10]), [10, 10]]
    const weights = weightsOfNextBall('ten-pin', balls, oddsOf(bowler).baseline)
    if (!weights) throw new Error('the game is not over')
    const { worthOfLeave } = pricingOf(tenPin, weights)
    for (const mask of [1, 5, 64, 576, 1022])
      expect(worthOfLeave(0) - worthOfLeave(mask)).toBeCloseTo(countPins(mask), 9)
  })

  // rules of play: under current-frame scoring a strike is 30 and nothing depends on other frames
  it('does not depend on the score under current-frame scoring', () => {
    const { baseline } = oddsOf(bowler)
    const weights = weightsOfNextBall('current-frame', [[10], [10]], baseline)
    expect(weights).toEqual(averageWeights(frame))
    const { worthOfLeave } = pricingOf(frame)
    const single = oddsOf(bowler).oddsOf(64)
    expect(worthOfLeave(0) - worthOfLeave(64)).toBeCloseTo(
      30 - (single.conversion * 19 + (1 - single.conversion) * (9 + single.missPins)),
      9,
    )
  })
})
