import { playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import { followTheMiss } from '../../../../src/sim/world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, LaneOil, Posted } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../../../src/sim/world/lane/generator.js'
import { hybrid, plastic, weakPearl } from '../../world/ball/bag-for-tests.js'

export const drawnOil: LaneOil = { kind: 'limits', limits: WIDEST_LIMITS }

export const eyesight = { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 }

/** A one-lane block of practice throws with one other bowler. */
export function setupFor(posted: Posted, oil: LaneOil = drawnOil): BlockSetup {
  return {
    name: 'belief',
    lanes: [{ name: 'lane 3', oil }],
    bag: [hybrid, plastic],
    bowler: levelProfile('220', 'tweener', 'right'),
    field: [
      {
        profile: levelProfile('180', 'stroker', 'left'),
        ball: weakPearl,
        aim: { feetBoard: 22, targetBoard: 11, speedStep: 0 },
      },
    ],
    practiceThrows: 12,
    games: 1,
    scoring: 'ten-pin',
    posted,
    seeing: eyesight,
  }
}

/** A block after some first balls that follow the miss. */
export function playedBlock(setup: BlockSetup, seed: string, throws: number): BlockState {
  let state = beginBlock(setup, seed)
  for (let thrown = 0; thrown < throws; thrown++) {
    const view = playerView(state)
    if (!view) throw new RangeError('The block is over.')
    const last = view.onThisLane.at(-1)
    state = advance(
      state,
      last ? { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) } : view.suggestion,
    )
  }
  return state
}
