import { choose } from '../../../../src/sim/analysis/policies/policies.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import type { BlockSetup, BlockState } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import type { OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { hybrid, urethane, weakPearl } from '../../world/ball/bag-for-tests.js'
import { houseForty } from '../../world/lane/patterns-for-tests.js'

/** One lane, nothing posted, one other bowler. */
export const setup: BlockSetup = {
  name: 'fair',
  lanes: [{ name: 'lane 3', oil: { kind: 'pattern', pattern: houseForty } }],
  bag: [hybrid, weakPearl, urethane],
  bowler: levelProfile('200'),
  field: [
    { profile: levelProfile('180', 'stroker'), ball: hybrid, aim: { feetBoard: 22, targetBoard: 10, speedStep: 0 } },
  ],
  practiceThrows: 1,
  games: 1,
  scoring: 'ten-pin',
  posted: 'nothing',
  seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
}

/** A pattern whose halves differ, so that a mirrored one is another. */
export const lopsided: OilPattern = {
  name: 'lopsided',
  passes: [...houseForty.passes, { ...houseForty.passes[0], fromBoard: 4, toBoard: 14, microlitresPerBoard: 60 }],
}

export const mirrored = (pattern: OilPattern): OilPattern => ({
  ...pattern,
  passes: pattern.passes.map((pass) => ({ ...pass, fromBoard: 40 - pass.toBoard, toBoard: 40 - pass.fromBoard })),
})

/** The block after `throws` throws of one who follows the miss. */
export function stateAfter(from: BlockSetup, throws: number, seed = 'fair tests'): BlockState {
  let state = beginBlock(from, seed)
  for (let k = 0; k < throws; k++) state = advance(state, choose('thumb', state))
  return state
}
