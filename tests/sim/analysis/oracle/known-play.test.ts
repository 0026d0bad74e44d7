import { describe, expect, it } from 'vitest'
import { decisionOf, knownSearch, laneInPlay } from '../../../../src/sim/analysis/oracle/known-choice.js'
import { knownPlay } from '../../../../src/sim/analysis/oracle/known-play.js'
import { deliveryNodes } from '../../../../src/sim/analysis/shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../../../../src/sim/analysis/shots/direct-worth.js'
import { dynamicsOfBag, pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import type { BlockState, Decision } from '../../../../src/sim/world/block/types.js'
import { levelProfile, STYLES } from '../../../../src/sim/world/bowler/levels.js'
import { meantThrow } from '../../../../src/sim/world/bowler/release.js'
import { bag } from '../../world/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../../world/lane/patterns-for-tests.js'
import { setup } from '../grade/block-for-tests.js'

const MISSES = 16_384
const nodes = deliveryNodes(MISSES, 1_000_000)

/** What a choice is worth over thousands of misses that no search has looked at. */
function rolledWorth({ setup, lanes }: BlockState, { ballId, aim }: Decision): number {
  const worths = new Float64Array(MISSES)
  const ball = dynamicsOfBag(setup.bag)[setup.bag.findIndex(({ id }) => id === ballId)]!
  const worthOf = firstBallWorth(pricingOf(setup), aim.speedStep)
  deliverAll(laneInPlay(setup, lanes[0]!), ball, meantThrow(setup.bowler, aim, 'strike'), nodes, worthOf, worths)
  return meanOf(worths)
}

/** The best of the quick search alone. */
const quickChoice = ({ setup, lanes }: BlockState): Decision => decisionOf(setup, knownSearch(setup, lanes[0]!).best)

// outside check: every miss of thousands rolled by itself (plain Monte Carlo)
describe('the play of one who sees the oil', () => {
  const compared = [houseForty, flatForty, flatFortyFive, shortThirtyFive].flatMap((pattern) =>
    STYLES.map((style) => {
      const lanes = [{ name: 'lane 1', oil: { kind: 'pattern', pattern } }] as const
      const own = { ...setup, lanes, bag, bowler: levelProfile('200', style), field: [], practiceThrows: 0 }
      const block = beginBlock(own, 'known')
      return rolledWorth(block, knownPlay(block)) - rolledWorth(block, quickChoice(block))
    }),
  )

  it('is ahead of the quick search in the mean, and never further behind it than thousands of misses leave open', () => {
    expect(compared).toHaveLength(16)
    expect(Math.min(...compared)).toBeGreaterThan(-0.2)
    expect(compared.reduce((sum, gain) => sum + gain, 0) / compared.length).toBeGreaterThan(0.03)
  })
})
