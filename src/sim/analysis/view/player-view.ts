import type { BlockState, Decision, PostedSheet, ThrowRecord } from '../../world/block/types.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { startingLine } from './starting-line.js'
import { suggestSpare } from './suggest-spare.js'

/** All that the player may look at before a throw; nothing here comes from the hidden oil but what is posted. */
export interface PlayerView {
  readonly laneName: string
  readonly posted: PostedSheet | null
  /** The player's own throws on this lane, oldest first. */
  readonly onThisLane: readonly ThrowRecord[]
  /** The decision the panel starts from. */
  readonly suggestion: Decision
}

/** The player's view of the coming throw; null when the block is over. */
export function playerView(state: BlockState): PlayerView | null {
  const spot = state.spot
  if (!spot) return null
  const posted = state.posted[spot.lane]
  const onThisLane = state.throws.filter((one) => one.spot.lane === spot.lane)
  return {
    laneName: state.setup.lanes[spot.lane].name,
    posted,
    onThisLane,
    suggestion: state.standing === FULL_RACK ? firstBall(state, posted, onThisLane) : suggestSpare(state),
  }
}

/** The last first ball on this lane again, or the line a sensible bowler starts with. */
function firstBall(state: BlockState, posted: PostedSheet | null, onThisLane: readonly ThrowRecord[]): Decision {
  const isFirstBall = (one: ThrowRecord): boolean =>
    one.standingBefore === FULL_RACK && one.decision.release === 'strike'
  const last = onThisLane.findLast(isFirstBall) ?? state.throws.findLast(isFirstBall)
  return last ? last.decision : startingLine(state.setup, posted)
}

/** Whether the coming throw is the first at its rack, so that felling all ten is a strike and not a spare. */
export function facesNewRack(state: BlockState): boolean {
  const { spot, standing } = state
  if (!spot || standing !== FULL_RACK) return false
  if (spot.ball === 1) return true
  const last = state.throws.at(-1)
  return last !== undefined && last.standingAfter === 0
}
