import { beginBelief, beliefAfter, updateBelief } from '../../src/sim/belief/belief.js'
import { shownThrows } from '../../src/sim/belief/shown.js'
import { searchFair } from '../../src/sim/fair/fair-search.js'
import { setupOf, statesByThumb } from './decision.js'
import { type BenchRow, timeEach, timesOf } from './measure.js'

const SEEDS = ['a', 'b', 'c'] as const
const THROWS = 10

/** What a belief about unseen oil costs: its beginning and each throw taken in. */
export async function benchBelief(): Promise<BenchRow[]> {
  const setup = await setupOf('unseen-draw')
  const begin = timeEach((run) => beginBelief(setup, 0, `${run}`), 5, 1)
  const updates = SEEDS.flatMap((seed) => {
    const shown = shownThrows(statesByThumb(setup, seed, THROWS).at(-1)!, [0])
    let belief = beginBelief(setup, 0, seed)
    return timeEach(
      (run) => {
        belief = updateBelief(belief, shown[run]!)
      },
      shown.length,
      0,
    )
  })
  return [
    { name: 'belief, beginning', unit: 'ms', measured: timesOf(begin) },
    { name: 'belief, one throw taken in', unit: 'ms', measured: timesOf(updates) },
  ]
}

/** The race of all lines over lanes drawn from the belief. */
export async function benchFair(): Promise<BenchRow[]> {
  const setup = await setupOf('unseen-draw')
  const beliefs = SEEDS.map((seed) => beliefAfter(statesByThumb(setup, seed, THROWS).at(-1)!, 0))
  const search = (run: number): unknown => searchFair(setup, beliefs[run % beliefs.length]!, 0)
  return [{ name: 'fair search', unit: 'ms', measured: timesOf(timeEach(search, 6, 1)) }]
}
