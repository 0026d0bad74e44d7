import { trueOilPrices } from '../../../src/sim/analysis/debrief/ledger/throw-worths.js'
import { blockPricing } from '../../../src/sim/analysis/grade/lane-baseline.js'
import { spareSituationOf } from '../../../src/sim/analysis/oracle/known-choice.js'
import { deliveryNodes } from '../../../src/sim/analysis/shots/delivery-nodes.js'
import { deliverShot, rackWorth } from '../../../src/sim/analysis/shots/spare-choice.js'
import { suggestSpare } from '../../../src/sim/analysis/view/suggest-spare.js'
import { stream } from '../../../src/sim/random.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import { leaveName } from '../../../src/sim/world/pins/leaves.js'
import { drawRackNature } from '../../../src/sim/world/pins/nature.js'
import { meanAndError, setupOf } from './blocks.js'

const leave = (...pins: readonly number[]): number => pins.reduce((mask, pin) => mask | (1 << (pin - 1)), 0)
/** A dozen leaves that come up most, single pins to splits. */
const LEAVES = [
  leave(10),
  leave(7),
  leave(4),
  leave(6),
  leave(9),
  leave(2, 8),
  leave(3, 10),
  leave(6, 10),
  leave(4, 7),
  leave(1, 2, 4),
  leave(3, 6, 10),
  leave(2, 4, 5, 8),
]
const NODES_START = 3_000_000

/** Prices of spares on the oil as it lies against so many live throws each. */
export function spareErrors(throws: number): void {
  const begun = beginBlock({ ...setupOf('posted', 0), practiceThrows: 0 }, 'spares')
  const offs = LEAVES.map((standing) => {
    const state = { ...begun, standing, spot: { ...begun.spot!, ball: 2 } }
    const shot = suggestSpare(state)
    const price = trueOilPrices(state).ofChoice(shot)
    const situation = spareSituationOf(state, blockPricing(state))
    const ballIndex = state.setup.bag.findIndex(({ id }) => id === shot.ballId)
    const worths = new Float64Array(throws)
    let next = 0
    deliverShot(
      situation,
      { ballIndex, aim: shot.aim, release: shot.release },
      deliveryNodes(throws, NODES_START),
      (rolled) =>
        rackWorth(
          situation,
          ballIndex,
          rolled,
          drawRackNature(
            stream({ seed: 'spare study', game: 0, frame: standing, ball: 0, purpose: 'study', index: next++ }),
          ),
        ),
      worths,
    )
    const live = meanAndError([...worths])
    console.log(
      `${leaveName(standing).padEnd(12)} ${shot.ballId} ${shot.aim.feetBoard}/${shot.aim.targetBoard} price ${price.toFixed(2)} live ${live.mean.toFixed(2)} ± ${live.error.toFixed(2)} off ${(price - live.mean).toFixed(2)}`,
    )
    return { off: price - live.mean, error: live.error }
  })
  const square = offs.reduce((sum, { off }) => sum + off * off, 0) / offs.length
  const noise = offs.reduce((sum, { error }) => sum + error * error, 0) / offs.length
  console.log(
    `rms ${Math.sqrt(square).toFixed(3)}, of it ${Math.sqrt(noise).toFixed(3)} the live throws' own; without ${Math.sqrt(Math.max(0, square - noise)).toFixed(3)}`,
  )
}
