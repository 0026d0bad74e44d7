/**
 * Whether the pins that are shown falling end as the record has it: a thousand throws of blocks, right- and left-handed, lines
 * spread about the one offered. `npm run study pins-fall` prints:
 *
 *     throws  other leave than on record  strikes
 *     1005    0                           163
 */
import { beginScenario } from '../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { playerView } from '../../src/sim/analysis/view/player-view.js'
import { stream } from '../../src/sim/random.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { pinFall } from '../../src/sim/world/block/pin-fall.js'
import { FULL_RACK } from '../../src/sim/world/pins/leaves.js'

const THROWS = 1000
const LANES = ['house-forty', 'left-house'] as const

export async function run(): Promise<void> {
  let throws = 0
  let other = 0
  let strikes = 0
  for (let count = 0; throws < THROWS; count++) {
    const seed = `pins-fall-${count}`
    const random = stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'delivery' })
    let block = beginScenario(await loadScenario(LANES[count % LANES.length]!), seed)
    const opening = playerView(block)!.suggestion
    while (block.spot) {
      const aim = block.standing === FULL_RACK ? opening.aim : { feetBoard: 25, targetBoard: 20, speedStep: 0 as const }
      const targetBoard = Math.min(30, Math.max(4, aim.targetBoard + Math.round(8 * random() - 4) / 2))
      block = advance(block, { ...opening, aim: { ...aim, targetBoard } })
    }
    block.throws.forEach(({ standingBefore, standingAfter }, index) => {
      if (pinFall(block, index, [0.1, 0.5]).standing !== standingAfter) other++
      if (standingBefore === FULL_RACK && standingAfter === 0) strikes++
      throws++
    })
  }
  process.stdout.write(`throws  other leave than on record  strikes\n${throws}  ${other}  ${strikes}\n`)
}
