import { seenLately } from '../../sim/analysis/practice/learner.js'
import type { Session } from '../../sim/analysis/practice/session.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { loadScenario } from '../library/load.js'

/** Positions of a session's store that were not asked lately, nor are to be asked now. */
export function unseenCount({ store, learner, day, drawn }: Session): number {
  const seen = seenLately(learner, day)
  const now = new Set(drawn.map(({ id }) => id))
  return store.filter(({ id }) => !seen.has(id) && !now.has(id)).length
}

/** A block that further positions are looked for in: on the lanes of the others, under a seed that was not used yet. */
export async function furtherBlock({
  store,
  learner,
}: Session): Promise<{ readonly scenario: string; readonly state: BlockState }> {
  const names = [...new Set(store.map(({ moment }) => moment.scenario))].sort()
  const seeds = new Set(store.map(({ moment }) => moment.seed))
  let number = learner.answers.length
  while (seeds.has(`further-${number}`)) number++
  const scenario = names[number % names.length] ?? 'house-forty'
  return { scenario, state: beginScenario(await loadScenario(scenario), `further-${number}`) }
}
