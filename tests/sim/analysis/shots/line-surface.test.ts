import { describe, expect, it } from 'vitest'
import { SPEED_STEPS, valuingFor } from '../../../../src/sim/analysis/shots/best-line.js'
import { LAYDOWNS, LINES, SWINGS } from '../../../../src/sim/analysis/shots/line-grid.js'
import { isNear, newLineSurface, type OtherSpeeds, rollLines } from '../../../../src/sim/analysis/shots/line-surface.js'
import { expectedWorth } from '../../../../src/sim/analysis/shots/line-value.js'
import { pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { layPattern } from '../../../../src/sim/world/lane/pattern.js'
import { sandedSolid, weakPearl } from '../../world/ball/bag-for-tests.js'
import { flatFortyFive, houseForty } from '../../world/lane/patterns-for-tests.js'

const profile = levelProfile('200')
const pricing = pricingOf({ bowler: profile, scoring: 'ten-pin' })

describe('lines that are filled in at other speeds', () => {
  const cases = [houseForty, flatFortyFive].flatMap((pattern) =>
    [sandedSolid, weakPearl].map((ball) => {
      const film = layPattern(pattern)
      const rolledBy = (otherSpeeds: OtherSpeeds) => {
        const surface = newLineSurface()
        rollLines(film, buildStepTable(film), dynamicsOf(ball), profile, surface, otherSpeeds)
        return surface
      }
      return { rolled: rolledBy('rolled'), filledIn: rolledBy('filled-in') }
    }),
  )

  it('are those rolled one by one at the usual speed, to the last bit', () => {
    for (const { rolled, filledIn } of cases) {
      const usual = (values: Float64Array) => [...values.subarray(LINES, 2 * LINES)]
      expect(usual(filledIn.lateralMetres)).toEqual(usual(rolled.lateralMetres))
      expect(usual(filledIn.outermostMetres)).toEqual(usual(rolled.outermostMetres))
    }
  })

  // outside check: the same lines rolled one by one
  it('are worth what those rolled one by one are, within a tenth of a pin in nineteen of twenty at the usual speed and three tenths at others', () => {
    const off = SPEED_STEPS.map((): number[] => [])
    for (const { rolled, filledIn } of cases)
      for (let laydown = 3; laydown < LAYDOWNS - 5; laydown++)
        for (let swing = 5; swing < SWINGS - 7; swing++) {
          if (!isNear(rolled, laydown, swing)) continue
          SPEED_STEPS.forEach((step, at) => {
            const valuing = valuingFor(profile, pricing, at)
            const worth = expectedWorth(rolled, laydown, swing, step, valuing)
            off[at]!.push(Math.abs(expectedWorth(filledIn, laydown, swing, step, valuing) - worth))
          })
        }
    const [slower, usual, faster] = off.map((values) => values.sort((a, b) => a - b)[Math.floor(0.95 * values.length)]!)
    expect(usual).toBeLessThan(0.1)
    expect(Math.max(slower!, faster!)).toBeLessThan(0.3)
  })
})
