import { lazily } from '../../lazily.js'
import type { BlockSetup } from '../../world/block/types.js'
import { BELIEF_SIZE, type Belief, beliefFrom, updateBelief } from './belief.js'
import { knownBefore, type ShownThrow } from './shown.js'

/**
 * What can be known of a lane, drawn twice. A choice that is best among a few hundred imagined lanes is partly best for
 * the luck of their draw; held against lanes drawn apart it looks only as good as it is.
 */
export interface BeliefPair {
  readonly toChooseBy: Belief
  /** No choice is made by it; brought up to date when it is asked for. */
  readonly toCountBy: () => Belief
}

/** What can be known before the first throw. @param seed of the block: of it, only what is posted and draws of purpose `solver` are used */
export function beginPair(setup: BlockSetup, lane: number, seed: string, size: number = BELIEF_SIZE): BeliefPair {
  const known = knownBefore(setup, seed)
  return {
    toChooseBy: beliefFrom(known, lane, seed, size),
    toCountBy: lazily(() => beliefFrom(known, lane, `${seed} counted`, size)),
  }
}

/** The pair after one more shown throw; the old one stays as it was. */
export function updatePair({ toChooseBy, toCountBy }: BeliefPair, shown: ShownThrow): BeliefPair {
  return { toChooseBy: updateBelief(toChooseBy, shown), toCountBy: lazily(() => updateBelief(toCountBy(), shown)) }
}
