import { familyOf, freshOil } from '../../sim/analysis/practice/make-seen.js'
import { familyKey } from '../../sim/analysis/practice/schedule.js'
import type { Session } from '../../sim/analysis/practice/session.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { loadScenario } from '../library/load.js'

/** The lane of the short block that a session ends with. */
export interface ShortBlockLane {
  readonly scenario: Scenario
  readonly seed: string
  readonly family: string
}

/** So many seeds are tried for oil of a family that was practised. */
const MOST_TRIED = 40

/**
 * Fresh oil of a family that was practised, on a lane of the library under a seed that no position has. The same answers on the same
 * day are given the same one.
 */
export async function shortBlockLane({ plan, store, day, learner }: Session): Promise<ShortBlockLane> {
  const isPractised = new Set([...plan.families, ...plan.comeBack])
  const names = [
    ...new Set(store.filter((one) => isPractised.has(familyKey(one))).map(({ moment }) => moment.scenario)),
  ].sort()
  const { length: answered } = learner.answers
  let lane: ShortBlockLane | null = null
  for (let place = 0; place < MOST_TRIED; place++) {
    const scenario = await loadScenario(names[(answered + place) % names.length] ?? 'house-forty')
    const seed = `short-${day}-${answered}-${place}`
    const { lengthFeet, ratio } = freshOil(beginScenario(scenario, seed), 0)
    const family = familyKey({ family: familyOf(lengthFeet, ratio) })
    lane = { scenario, seed, family }
    if (isPractised.has(family)) break
  }
  return lane!
}
