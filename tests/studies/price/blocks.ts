import { choose, type Policy } from '../../../src/sim/analysis/policies/policies.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import type { BlockSetup, BlockState } from '../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../src/sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../../src/sim/world/lane/generator.js'
import { bag } from '../../sim/world/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../../sim/world/lane/patterns-for-tests.js'

export const OILS = ['drawn', 'posted'] as const
export type Oil = (typeof OILS)[number]

const WRITTEN = [houseForty, flatFortyFive, shortThirtyFive, flatForty] as const

/** One lane, six balls, nobody else: drawn oil that nothing is told of, or written oil with its sheet. */
export function setupOf(oil: Oil, block: number, games = 1): BlockSetup {
  return {
    name: `${oil} ${block}`,
    lanes: [
      {
        name: 'lane 1',
        oil:
          oil === 'drawn'
            ? { kind: 'limits', limits: WIDEST_LIMITS }
            : { kind: 'pattern', pattern: WRITTEN[block % WRITTEN.length]! },
      },
    ],
    bag,
    bowler: levelProfile('200'),
    field: [],
    practiceThrows: 2,
    games,
    scoring: 'ten-pin',
    posted: oil === 'drawn' ? 'nothing' : 'sheet',
    seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
  }
}

/** A block's states before each throw by a policy, and last the one after all. */
export function statesBy(policy: Policy, setup: BlockSetup, seed: string): BlockState[] {
  const states = [beginBlock(setup, seed)]
  for (let state = states[0]!; state.spot; state = states.at(-1)!) states.push(advance(state, choose(policy, state)))
  return states
}

export function meanAndError(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length
  const square = values.reduce((sum, one) => sum + (one - mean) ** 2, 0)
  return { mean, error: Math.sqrt(square / Math.max(1, values.length - 1) / values.length) }
}

export const told = ({ mean, error }: { mean: number; error: number }): string =>
  `${mean.toFixed(2)} ± ${error.toFixed(2)}`
