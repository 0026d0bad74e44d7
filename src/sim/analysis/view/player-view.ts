import { metresToBoards, metresToFeet } from '../../units.js'
import type { BlockState, Decision, ThrowRecord } from '../../world/block/types.js'
import { measurePattern } from '../../world/lane/pattern.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { suggestSpare } from './suggest-spare.js'

/** What the scenario posts about a lane's oil. */
export interface PostedSheet {
  readonly lengthFeet: number
  readonly volumeMillilitres?: number
  readonly ratio?: number
}

/** All that the player may look at before a throw; nothing here comes from the hidden oil but what is posted. */
export interface PlayerView {
  readonly laneName: string
  readonly posted: PostedSheet | null
  /** The player's own throws on this lane, oldest first. */
  readonly onThisLane: readonly ThrowRecord[]
  /** The decision the panel starts from. */
  readonly suggestion: Decision
}

const UNPOSTED_LENGTH_FEET = 40

/** The player's view of the coming throw; null when the block is over. */
export function playerView(state: BlockState): PlayerView | null {
  const spot = state.spot
  if (!spot) return null
  const posted = postedSheet(state, spot.lane)
  const onThisLane = state.throws.filter((one) => one.spot.lane === spot.lane)
  return {
    laneName: state.setup.lanes[spot.lane].name,
    posted,
    onThisLane,
    suggestion: state.standing === FULL_RACK ? firstBall(state, posted, onThisLane) : suggestSpare(state),
  }
}

function postedSheet(state: BlockState, lane: number): PostedSheet | null {
  const { posted } = state.setup
  if (posted === 'nothing') return null
  const bowledBefore = (state.setup.fieldFramesBefore ?? 0) > 0
  const first = bowledBefore
    ? state.fieldThrows.find((one) => one.lane === lane)
    : state.throws.find((one) => one.spot.lane === lane)
  const laid = first?.truth.laneBefore ?? state.lanes[lane]
  const measured = measurePattern(laid.film)
  const lengthFeet = Math.round(metresToFeet(measured.lengthMetres))
  if (posted === 'length') return { lengthFeet }
  return {
    lengthFeet,
    volumeMillilitres: Math.round(measured.volumeMicrolitres / 100) / 10,
    ratio: Math.round(measured.ratio * 10) / 10,
  }
}

/** The last first ball on this lane again, or an opening line by the trade's rule of thumb (exit board = length − 31). */
function firstBall(state: BlockState, posted: PostedSheet | null, onThisLane: readonly ThrowRecord[]): Decision {
  const isFirstBall = (one: ThrowRecord): boolean =>
    one.standingBefore === FULL_RACK && one.decision.release === 'strike'
  const last = onThisLane.findLast(isFirstBall) ?? state.throws.findLast(isFirstBall)
  if (last) return last.decision
  const exitBoard = (posted?.lengthFeet ?? UNPOSTED_LENGTH_FEET) - 31
  const targetBoard = Math.max(4, exitBoard + 3)
  const slide = Math.round(metresToBoards(state.setup.bowler.slideToLaydownMetres))
  return {
    ballId: state.setup.bag[0].id,
    aim: { feetBoard: targetBoard + 5 + slide, targetBoard, speedStep: 0 },
    release: 'strike',
  }
}

/** Whether the coming throw is the first at its rack, so that felling all ten is a strike and not a spare. */
export function facesNewRack(state: BlockState): boolean {
  const { spot, standing } = state
  if (!spot || standing !== FULL_RACK) return false
  if (spot.ball === 1) return true
  const last = state.throws.at(-1)
  return last !== undefined && last.standingAfter === 0
}
