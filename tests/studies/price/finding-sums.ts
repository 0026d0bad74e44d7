import { accountOf } from '../../../src/sim/analysis/debrief/account.js'
import { OILS, setupOf, statesBy } from './blocks.js'

const HABITS = ['thumb', 'stay', 'random'] as const

/** What the findings of blocks add up to against what was charged. */
export function findingSums(first: number, count: number): void {
  let worst = 0
  let charged = 0
  let told = 0
  for (let block = first; block < first + count; block++) {
    const state = statesBy(HABITS[block % HABITS.length]!, setupOf(OILS[block % 2]!, block), `findings ${block}`).at(
      -1,
    )!
    const { tags, untoldPins, sums } = accountOf(state, { alternatives: false })
    const pins = tags.reduce((sum, tag) => sum + tag.pins, 0)
    const off = Math.abs(pins + untoldPins - sums.block.chargedPins)
    worst = Math.max(worst, off)
    charged += sums.block.chargedPins
    told += pins
    console.log(
      `${block} charged ${sums.block.chargedPins.toFixed(2)} told ${pins.toFixed(2)} untold ${untoldPins.toFixed(2)} off ${off.toExponential(1)}: ${tags.map((tag) => `${tag.kind} ${tag.pins.toFixed(1)}`).join(', ')}`,
    )
  }
  console.log(
    `furthest off ${worst.toExponential(1)}; told ${((100 * told) / charged).toFixed(0)} % of ${charged.toFixed(1)} pins`,
  )
}
