import type { BallSpecification } from '../../world/ball/specification.js'
import { beginBlock } from '../../world/block/begin.js'
import type { BlockSetup, BlockState, Observation, SeeingRules } from '../../world/block/types.js'
import type { BowlerProfile, Hand } from '../../world/bowler/profile.js'
import type { Aim, ReleaseKind } from '../../world/bowler/release.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { type PostedSheet, playerView } from '../view/player-view.js'

/** The line a throw was meant to take; shown for the player's own throws only. */
export interface ShownLine {
  readonly aim: Aim
  readonly release: ReleaseKind
}

/** One throw as the screen showed it: who bowled what, and what an eye could tell. Nothing hidden can be put in here. */
export interface ShownThrow {
  readonly lane: number
  readonly bowler: BowlerProfile
  readonly ball: BallSpecification
  /** Null for other bowlers, who tell nobody where they aim. */
  readonly line: ShownLine | null
  readonly standingBefore: number
  readonly observation: Observation
}

/** What is known of the oil and of looking at it before the first throw. */
export interface KnownBefore {
  /** The player's lanes in order, each with what is posted about its oil; null where nothing is. */
  readonly posted: readonly (PostedSheet | null)[]
  readonly seeing: SeeingRules
  /** The player's hand: lanes are imagined from this side, so that a mirrored block has a mirrored belief. */
  readonly hand: Hand
}

/** What a scenario tells under a seed before the first throw. The seed settles only what is posted. */
export function knownBefore(setup: BlockSetup, seed: string): KnownBefore {
  const start = beginBlock(setup, seed)
  const posted = setup.lanes.map((_, lane) => {
    if (!start.spot) return null
    return playerView({ ...start, spot: { ...start.spot, lane } })?.posted ?? null
  })
  return { posted, seeing: setup.seeing, hand: setup.bowler.hand }
}

/** Everything shown on some of a block's lanes so far, in order. */
export function shownThrows(state: BlockState, lanes: readonly number[]): ShownThrow[] {
  const { setup } = state
  return state.events.flatMap((event): ShownThrow[] => {
    if (event.type === 'throw') {
      const { spot, decision, standingBefore, observation } = event.record
      const ball = setup.bag.find((one) => one.id === decision.ballId)
      if (!ball || !lanes.includes(spot.lane)) return []
      const line = { aim: decision.aim, release: decision.release }
      return [{ lane: spot.lane, bowler: setup.bowler, ball, line, standingBefore, observation }]
    }
    if (event.type === 'field-throw') {
      const { lane, bowlerIndex, observation } = event.record
      const { profile, ball } = setup.field[bowlerIndex - 1]
      if (!lanes.includes(lane)) return []
      return [{ lane, bowler: profile, ball, line: null, standingBefore: FULL_RACK, observation }]
    }
    return []
  })
}
