import { beginBelief, updateBelief } from '../../src/sim/analysis/belief/belief.js'
import { type FairSession, sessionOf } from '../../src/sim/analysis/belief/session.js'
import { shownThrows } from '../../src/sim/analysis/belief/shown.js'
import { type FairChoices, gradeFair, prepareFair } from '../../src/sim/analysis/grade/fair-grade.js'
import { choose } from '../../src/sim/analysis/policies/policies.js'
import type { BlockState } from '../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../src/sim/world/pins/leaves.js'
import { setupOf, statesByThumb } from './decision.js'
import { type BenchRow, timeEach, timesOf } from './measure.js'

const SEEDS = ['a', 'b', 'c'] as const
const THROWS = 10
const MOMENTS = 6

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

/** Making ready what a coming throw is decided by, once what was shown has been taken in; and grading a choice by it. */
export async function benchFair(): Promise<BenchRow[]> {
  const setup = await setupOf('unseen-draw')
  const moments = SEEDS.flatMap((seed) => statesByThumb(setup, seed, THROWS + 12))
    .filter((state) => state.spot && state.throws.length > THROWS)
    .map((state) => ({ state, session: sessionOf(state) }))
  return [
    ...benchMoments(
      'first ball',
      moments.filter(({ state }) => state.standing === FULL_RACK),
    ),
    ...benchMoments(
      'spare',
      moments.filter(({ state }) => state.standing !== FULL_RACK),
    ),
  ]
}

interface KnownMoment {
  readonly state: BlockState
  readonly session: FairSession
}

function benchMoments(what: string, moments: readonly KnownMoment[]): BenchRow[] {
  const at = (run: number): KnownMoment => moments[run % moments.length]!
  const ready = (run: number): FairChoices => prepareFair(at(run).state, 'lane', at(run).session)
  const choices = Array.from({ length: MOMENTS }, (_, run) => ready(run))
  const grade = (run: number): unknown =>
    gradeFair(at(run % MOMENTS).state, choose('stay', at(run % MOMENTS).state), choices[run % MOMENTS])
  return [
    { name: `fair choices at a ${what}`, unit: 'ms', measured: timesOf(timeEach(ready, MOMENTS, 0)) },
    { name: `fair grade of a ${what}, once ready`, unit: 'ms', measured: timesOf(timeEach(grade, MOMENTS, 0)) },
  ]
}
