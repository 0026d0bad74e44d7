import { describe, expect, it } from 'vitest'
import { searchLines } from '../../../../src/sim/analysis/shots/best-line.js'
import { deliveryNodes } from '../../../../src/sim/analysis/shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../../../../src/sim/analysis/shots/direct-worth.js'
import { quadratureWorth } from '../../../../src/sim/analysis/shots/line-quadrature.js'
import { pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { type Aim, meantThrow } from '../../../../src/sim/world/bowler/release.js'
import { layPattern } from '../../../../src/sim/world/lane/pattern.js'
import { hybrid, urethane, weakPearl } from '../../world/ball/bag-for-tests.js'
import { flatFortyFive, houseForty, shortThirtyFive } from '../../world/lane/patterns-for-tests.js'

const profile = levelProfile('200')
const pricing = pricingOf({ bowler: profile, scoring: 'ten-pin' })
const bag = [hybrid, weakPearl, urethane].map((ball) => dynamicsOf(ball))
const ROLLED = 8192
const nodes = deliveryNodes(ROLLED, 1_000_000)
const worths = new Float64Array(ROLLED)

interface Checked {
  readonly rolled: number
  readonly standardError: number
  readonly bySurface: number
  readonly byQuadrature: number
}

/** Lines about the best of each ball on three patterns, moved and sped as given, three ways. */
function checked(moves: readonly (readonly [feet: number, target: number, speed: -1 | 0 | 1])[]): Checked[] {
  return [houseForty, flatFortyFive, shortThirtyFive].flatMap((pattern) => {
    const film = layPattern(pattern)
    const inPlay = { film, steps: buildStepTable(film) }
    const search = searchLines(film, bag, profile, pricing)
    return search.perBall.flatMap(({ ballIndex, aim }) =>
      moves.map(([feet, target, speedStep]) => {
        const moved: Aim = { feetBoard: aim.feetBoard + feet, targetBoard: aim.targetBoard + target, speedStep }
        deliverAll(
          inPlay,
          bag[ballIndex],
          meantThrow(profile, moved, 'strike'),
          nodes,
          firstBallWorth(pricing, speedStep),
          worths,
        )
        const rolled = meanOf(worths)
        const variance = worths.reduce((sum, worth) => sum + (worth - rolled) ** 2, 0) / (ROLLED - 1)
        return {
          rolled,
          standardError: Math.sqrt(variance / ROLLED),
          bySurface: search.worthOf(ballIndex, moved),
          byQuadrature: quadratureWorth(inPlay, bag[ballIndex], profile, moved, pricing),
        }
      }),
    )
  })
}

/** Expected worths are compared within a tenth of a pin and two standard errors of the rolled figure. */
const isClose = ({ rolled, standardError }: Checked, figure: number): boolean =>
  Math.abs(figure - rolled) < 0.1 + 2 * standardError

// outside check: every miss of thousands rolled by itself (plain Monte Carlo)
describe('worth of a line', () => {
  it('by the surface is what rolling misses one by one gives, for the best lines and their neighbours', () => {
    const all = checked([
      [0, 0, 0],
      [1, 0.5, 0],
      [-1, -0.5, 0],
    ])
    expect(all).toHaveLength(27)
    expect(all.filter((line) => !isClose(line, line.bySurface))).toEqual([])
  })

  const far = checked([
    [3, 1, 0],
    [0, -2, 0],
  ])

  // 4 of 18 lines are further off, by 0.37 pin at most: the worst on short oil played outside, where the gutter takes a share
  it.fails('known gap: the same for lines two boards and more from any choice', () => {
    expect(far.filter((line) => !isClose(line, line.bySurface))).toEqual([])
  })

  // measured: 0.37 and 0.47 pin at most
  it('by the surface and by quadrature is never much more than half a pin off, even there', () => {
    for (const { rolled, bySurface, byQuadrature } of far) {
      expect(Math.abs(bySurface - rolled)).toBeLessThan(0.6)
      expect(Math.abs(byQuadrature - rolled)).toBeLessThan(0.6)
    }
  })
})
