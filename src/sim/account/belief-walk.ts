import { type Belief, beginBelief, updateBelief } from '../belief/belief.js'
import { shownThrows } from '../belief/shown.js'
import type { BlockState } from '../block/types.js'

/** Beliefs about a block's lanes, carried along from throw to throw so that each shown throw is taken in once. */
export interface BeliefWalk {
  /** What could be known of a lane in a state; states must come in the order they were played. */
  readonly at: (state: BlockState, lane: number) => Belief
}

export function walkBeliefs(): BeliefWalk {
  const kept: Belief[] = []
  return {
    at: (state, lane) => {
      const place = kept.findIndex((belief) => belief.lanes.includes(lane))
      let belief = place >= 0 ? kept[place] : beginBelief(state.setup, lane, state.seed)
      const shown = shownThrows(state, belief.lanes)
      if (shown.length < belief.throwsSeen)
        throw new RangeError(`This belief has taken in ${belief.throwsSeen} throws, the state shows ${shown.length}.`)
      for (const one of shown.slice(belief.throwsSeen)) belief = updateBelief(belief, one)
      if (place >= 0) kept[place] = belief
      else kept.push(belief)
      return belief
    },
  }
}
