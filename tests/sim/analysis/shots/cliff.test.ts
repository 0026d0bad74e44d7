import { describe, expect, it } from 'vitest'
import { deliveryNodes, ERROR_DIMENSIONS } from '../../../../src/sim/analysis/shots/delivery-nodes.js'
import { LAYDOWNS, LINES, SWING_STEP_METRES, SWINGS } from '../../../../src/sim/analysis/shots/line-grid.js'
import { newLineSurface } from '../../../../src/sim/analysis/shots/line-surface.js'
import { expectedWorth } from '../../../../src/sim/analysis/shots/line-value.js'
import { buildValueTable, ENTRIES, visitEntries } from '../../../../src/sim/analysis/value/value-table.js'
import { normalDensity, normalDistribution } from '../../../../src/sim/exact-math.js'
import { BOARD_WIDTH_METRES, boardToMetres, metresToBoard } from '../../../../src/sim/units.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { ARROWS_METRES } from '../../../../src/sim/world/bowler/release.js'

/**
 * A one-sided cliff: aiming at x is worth x up to the edge at 0 and -5 beyond, with a miss of one standard deviation.
 * By calculus the expected worth is a·Φ(-a) - φ(a) - 5·Φ(a); its maximum is at a = -1.264 and is -1.829.
 */
const closedForm = (a: number): number => a * normalDistribution(-a) - normalDensity(a) - 5 * normalDistribution(a)
const BEST_AIM = -1.264
const BEST_WORTH = -1.829
const cliff = (x: number): number => (x < 0 ? x : -5)

const best = (worthAt: (aim: number) => number): { aim: number; worth: number } => {
  let found = { aim: 0, worth: -Infinity }
  for (let aim = -3; aim <= 0.5; aim += 0.01) {
    const worth = worthAt(aim)
    if (worth > found.worth) found = { aim, worth }
  }
  return found
}

describe('one-sided cliff', () => {
  it('has the optimum that is looked for', () => {
    const { aim, worth } = best(closedForm)
    expect(aim).toBeCloseTo(BEST_AIM, 2)
    expect(worth).toBeCloseTo(BEST_WORTH, 3)
  })

  it('is kept off by as much as calculus says when misses are rolled one by one', () => {
    const nodes = deliveryNodes(4096, 0)
    const misses = Array.from({ length: 4096 }, (_, k) => nodes[k * ERROR_DIMENSIONS + 1])
    const { aim, worth } = best((a) => misses.reduce((sum, miss) => sum + cliff(a + miss), 0) / misses.length)
    expect(Math.abs(aim - BEST_AIM)).toBeLessThan(0.03)
    expect(Math.abs(worth - BEST_WORTH)).toBeLessThan(0.01)
  })

  it('is kept off by as much as calculus says on a surface of lines', () => {
    const profile = levelProfile('200')
    const SIGMA_BOARDS = 2
    const error = {
      ...profile.error,
      lateralMetres: 0,
      speedMetresPerSecond: 0,
      lateralAngleCorrelation: 0,
    }
    // one standard deviation of the angle moves the ball by SIGMA_BOARDS at the pins, edge at board 20
    const perSwing = (SIGMA_BOARDS * BOARD_WIDTH_METRES * SWING_STEP_METRES) / (error.angleRadians * ARROWS_METRES)
    const middle = Math.floor(SWINGS / 2)
    const surface = newLineSurface()
    surface.outermostMetres.fill(1)
    for (let node = 0; node * LINES < surface.lateralMetres.length; node++)
      for (let laydown = 0; laydown < LAYDOWNS; laydown++)
        for (let swing = 0; swing < SWINGS; swing++)
          surface.lateralMetres[(node * LAYDOWNS + laydown) * SWINGS + swing] =
            boardToMetres(20) + (swing - middle) * perSwing
    const exact = new Float64Array(ENTRIES)
    visitEntries((place, offset) => {
      exact[place] = cliff((metresToBoard(boardToMetres(20) - offset) - 20) / SIGMA_BOARDS)
    })
    const valuing = {
      table: buildValueTable(exact),
      gutterWorth: -100,
      error,
      speedStepMetresPerSecond: 0.5,
      offNormalErrorFactor: 1,
      swingMetresPerRadian: ARROWS_METRES,
    }
    const { aim, worth } = best((a) =>
      expectedWorth(surface, 20, middle + (a * SIGMA_BOARDS * BOARD_WIDTH_METRES) / perSwing, 0, valuing),
    )
    expect(Math.abs(aim - BEST_AIM)).toBeLessThan(0.05)
    expect(Math.abs(worth - BEST_WORTH)).toBeLessThan(0.03)
  })
})
