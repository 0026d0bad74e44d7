import { playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import { followTheMiss } from '../../../../src/sim/world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'
import { hybrid, plastic, weakPearl } from '../../world/ball/bag-for-tests.js'
import { flatForty, houseForty } from '../../world/lane/patterns-for-tests.js'

/** One lane of house oil with the sheet posted, three balls, no field. */
export const houseSetup: BlockSetup = {
  name: 'house for accounts',
  lanes: [{ name: 'lane 3', oil: { kind: 'pattern', pattern: houseForty } }],
  bag: [hybrid, weakPearl, plastic],
  bowler: levelProfile('200'),
  field: [],
  practiceThrows: 0,
  games: 1,
  scoring: 'ten-pin',
  posted: 'sheet',
  seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
}

/** A pair of different lanes with practice and two other bowlers, for what must hold of any block. */
export const pairSetup: BlockSetup = {
  ...houseSetup,
  name: 'pair for accounts',
  lanes: [
    { name: 'lane 7', oil: { kind: 'pattern', pattern: houseForty } },
    { name: 'lane 8', oil: { kind: 'pattern', pattern: flatForty } },
  ],
  field: [
    { profile: levelProfile('180', 'stroker'), ball: weakPearl, aim: { feetBoard: 22, targetBoard: 10, speedStep: 0 } },
    {
      profile: { ...levelProfile('200'), hand: 'left' },
      ball: hybrid,
      aim: { feetBoard: 24, targetBoard: 12, speedStep: 0 },
    },
  ],
  practiceThrows: 1,
  posted: 'length',
}

/** Throws what is suggested, answering each call by the rule of thumb, until the block is over or `count` balls are thrown. */
export function thumbStates(setup: BlockSetup, seed: string, count = Number.POSITIVE_INFINITY): BlockState[] {
  const states = [beginBlock(setup, seed)]
  while (states.length <= count) {
    const state = states[states.length - 1]
    const view = playerView(state)
    if (!view) break
    const last = view.onThisLane.findLast((one) => one.standingBefore === FULL_RACK)
    const answered =
      state.standing === FULL_RACK && last
        ? { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) }
        : view.suggestion
    states.push(advance(state, answered))
  }
  return states
}

/** The same first ball every time, spares as suggested. */
export function stubbornState(setup: BlockSetup, seed: string, firstBall: Decision, count: number): BlockState {
  let state = beginBlock(setup, seed)
  for (let k = 0; k < count && state.spot; k++) {
    const suggestion = playerView(state)?.suggestion ?? firstBall
    state = advance(state, state.standing === FULL_RACK ? firstBall : suggestion)
  }
  return state
}
