import type { BlockEvent, BlockSetup, BlockState } from '../../world/block/types.js'
import { type BeliefPair, beginPair, updatePair } from './belief-pair.js'
import { shownThrows } from './shown.js'

/** What can be known of a block's lanes so far, carried along so that every throw is taken in once. */
export interface FairSession {
  readonly setup: BlockSetup
  readonly seed: string
  /** What is known of each lane; two lanes that are posted alike share it. */
  readonly beliefs: readonly BeliefPair[]
  readonly eventsSeen: number
  readonly lastEvent: BlockEvent | undefined
}

/** What can be known before the first throw. */
export function beginSession(setup: BlockSetup, seed: string): FairSession {
  const beliefs: BeliefPair[] = []
  setup.lanes.forEach((_, lane) => {
    const shared = beliefs.find((one) => one.toChooseBy.lanes.includes(lane))
    beliefs.push(shared ?? beginPair(setup, lane, seed))
  })
  return { setup, seed, beliefs, eventsSeen: 0, lastEvent: undefined }
}

/** Whether a state goes on from where a session stands. */
export function goesOn(session: FairSession, { setup, seed, events }: BlockState): boolean {
  return (
    setup === session.setup &&
    seed === session.seed &&
    events.length >= session.eventsSeen &&
    (session.eventsSeen === 0 || events[session.eventsSeen - 1] === session.lastEvent)
  )
}

/**
 * The session after everything shown up to `state`; only what is new is taken in. The old session stays as it was.
 * @throws RangeError when the state does not go on from the session
 */
export function follow(session: FairSession, state: BlockState): FairSession {
  if (!goesOn(session, state)) throw new RangeError('The block does not go on from where the session stands.')
  if (state.events.length === session.eventsSeen) return session
  const fresh = { ...state, events: state.events.slice(session.eventsSeen) }
  const updated = new Map(
    session.beliefs.map((pair) => [pair, shownThrows(fresh, pair.toChooseBy.lanes).reduce(updatePair, pair)]),
  )
  return {
    ...session,
    beliefs: session.beliefs.map((pair) => updated.get(pair) ?? pair),
    eventsSeen: state.events.length,
    lastEvent: state.events.at(-1),
  }
}

/** Sessions kept so that one who asks state after state pays for each throw once; the answer is the same without. */
const KEPT = 3
let kept: readonly FairSession[] = []

/** The session of a state, whatever was asked before. */
export function sessionOf(state: BlockState): FairSession {
  const nearest = kept.reduce<FairSession | null>(
    (best, one) => (goesOn(one, state) && one.eventsSeen >= (best?.eventsSeen ?? 0) ? one : best),
    null,
  )
  const session = follow(nearest ?? beginSession(state.setup, state.seed), state)
  kept = [session, ...kept.filter((one) => one !== nearest && one !== session)].slice(0, KEPT)
  return session
}
