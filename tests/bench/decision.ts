import { loadScenario } from '../../src/scenarios/library/load.js'
import { gradeKnown } from '../../src/sim/analysis/oracle/grade.js'
import { choose } from '../../src/sim/analysis/policies/policies.js'
import { searchLines } from '../../src/sim/analysis/shots/best-line.js'
import { pricingFor } from '../../src/sim/analysis/value/pricing.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock, patternOf } from '../../src/sim/world/block/begin.js'
import type { BlockSetup, BlockState } from '../../src/sim/world/block/types.js'
import type { OilFilm } from '../../src/sim/world/lane/film.js'
import { layPattern } from '../../src/sim/world/lane/pattern.js'
import { wornFilm } from '../sim/world/ball/lanes-for-tests.js'
import { type BenchRow, timeEach, timesOf } from './measure.js'

const DRAWN_FILMS = 8
const WEAR_STAGES = [0, 15, 45] as const

export const setupOf = async (name: string): Promise<BlockSetup> => (await loadScenario(name)).setup

/** Written and drawn oil, fresh and worn. */
async function films(): Promise<OilFilm[]> {
  const setups = await Promise.all(['house-forty', 'flat-forty-five', 'short-thirty-five'].map(setupOf))
  const drawn = (await setupOf('unseen-draw')).lanes[0].oil
  const patterns = [
    ...setups.map((setup) => patternOf(setup.lanes[0].oil, '1', 0)),
    ...Array.from({ length: DRAWN_FILMS }, (_, index) => patternOf(drawn, `bench ${index}`, 0)),
  ]
  return patterns.flatMap((pattern, index) =>
    WEAR_STAGES.map((throws) => wornFilm(layPattern(pattern), throws, 14 + (index % 5), 10 + (index % 3))),
  )
}

/** Pricing a bowler's results; the first in the process unpacks the carry table too. */
export async function benchPricing(): Promise<BenchRow[]> {
  const { bowler } = await setupOf('house-forty')
  const price = (): unknown => pricingFor(bowler, 'ten-pin')
  const [first] = timeEach(price, 1, 0)
  return [
    { name: 'pricing, first in a process', unit: 'ms', measured: timesOf([first!]) },
    { name: 'pricing a bowler', unit: 'ms', measured: timesOf(timeEach(price, 12, 3)) },
  ]
}

/** The best line of six balls with the oil in sight, each film once. */
export async function benchSearch(): Promise<BenchRow[]> {
  const { bag, bowler } = await setupOf('house-forty')
  const balls = bag.map((ball) => dynamicsOf(ball))
  const pricing = pricingFor(bowler, 'ten-pin')
  const all = await films()
  const search = (run: number): unknown => searchLines(all[run % all.length]!, balls, bowler, pricing)
  return [
    {
      name: `best line, ${bag.length} balls, ${all.length} films`,
      unit: 'ms',
      measured: timesOf(timeEach(search, all.length, 6)),
      goal: { most: 80, of: 'p95' },
    },
  ]
}

/** A block by rule of thumb, stopped before each throw. */
export function statesByThumb(setup: BlockSetup, seed: string, throws: number): BlockState[] {
  const states = [beginBlock(setup, seed)]
  while (states.length <= throws && states.at(-1)!.spot) {
    const state = states.at(-1)!
    states.push(advance(state, choose('thumb', state)))
  }
  return states
}

/** Grading a choice against the oil as it was, search included; and one whole throw of a block. */
export async function benchThrow(): Promise<BenchRow[]> {
  const setup = { ...(await setupOf('house-forty')), practiceThrows: 0 }
  const states = ['a', 'b', 'c'].flatMap((seed) => statesByThumb(setup, seed, 20)).filter((state) => state.spot)
  const firstBalls = states.filter((state) => state.standing === 1023)
  const spares = states.filter((state) => state.standing !== 1023)
  const grade =
    (among: readonly BlockState[]) =>
    (run: number): unknown => {
      const state = among[run % among.length]!
      const decision = choose('stay', state)
      // a lane state of its own, so that no search is kept from an earlier run
      return gradeKnown({ ...state, lanes: state.lanes.map((lane) => ({ ...lane })) }, decision)
    }
  const throwNext = (run: number): unknown => {
    const state = firstBalls[run % firstBalls.length]!
    return advance(state, choose('stay', state))
  }
  return [
    { name: 'a first ball of a block', unit: 'ms', measured: timesOf(timeEach(throwNext, 40, 8)) },
    { name: 'grade of a first ball', unit: 'ms', measured: timesOf(timeEach(grade(firstBalls), 24, 4)) },
    { name: 'grade of a spare', unit: 'ms', measured: timesOf(timeEach(grade(spares), 16, 4)) },
  ]
}
