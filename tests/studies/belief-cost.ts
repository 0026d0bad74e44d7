import { beginBelief, updateBelief } from '../../src/sim/analysis/belief/belief.js'
import { shownThrows } from '../../src/sim/analysis/belief/shown.js'
import { playerView } from '../../src/sim/analysis/view/player-view.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import { followTheMiss } from '../../src/sim/world/block/follow-the-miss.js'
import type { BlockSetup } from '../../src/sim/world/block/types.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../src/sim/world/lane/generator.js'
import { hybrid, weakPearl } from '../sim/world/ball/bag-for-tests.js'

const THROWS = 12

/** What a belief of 300 hypotheses costs in processor time: beginning, each throw, and the throws that renew the set. */
export function run(): void {
  const setup: BlockSetup = {
    name: 'cost',
    lanes: [{ name: 'lane 7', oil: { kind: 'limits', limits: WIDEST_LIMITS } }],
    bag: [hybrid],
    bowler: levelProfile('200'),
    field: [
      {
        profile: levelProfile('180', 'stroker'),
        ball: weakPearl,
        aim: { feetBoard: 22, targetBoard: 10, speedStep: 0 },
      },
    ],
    practiceThrows: THROWS,
    games: 1,
    scoring: 'ten-pin',
    posted: 'nothing',
    seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
  }
  for (const seed of ['warm up', 'cost 1', 'cost 2']) {
    let state = beginBlock(setup, seed)
    for (let k = 0; k < THROWS; k++) {
      const view = playerView(state)
      const last = view?.onThisLane.at(-1)
      if (!view) break
      state = advance(
        state,
        last ? { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) } : view.suggestion,
      )
    }
    const begin = process.cpuUsage()
    let belief = beginBelief(setup, 0, seed)
    const lines = [`begin ${milliseconds(begin)}`]
    for (const shown of shownThrows(state, [0])) {
      const start = process.cpuUsage()
      const before = belief
      belief = updateBelief(belief, shown)
      const renewed = belief.hypotheses.coordinates.some((z, i) => z !== before.hypotheses.coordinates[i])
      lines.push(`${shown.line ? 'own' : 'field'} ${milliseconds(start)}${renewed ? ' renewed' : ''}`)
    }
    console.log(`${seed}: ${lines.join(', ')}`)
  }
}

function milliseconds(since: NodeJS.CpuUsage): string {
  const { user, system } = process.cpuUsage(since)
  return `${((user + system) / 1000).toFixed(0)} ms`
}
