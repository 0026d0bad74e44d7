import type { BlockState, Decision } from '../block/types.js'
import type { BowlerProfile } from '../bowler/profile.js'
import type { Aim } from '../bowler/release.js'
import { FULL_RACK } from '../pins/leaves.js'
import { metresToBoards } from '../units.js'
import type { LineSearch, PricedLine } from './best-line.js'
import { OFFERED_LAYDOWN_BOARDS, OFFERED_SWING_BOARDS, OFFERED_TARGET_BOARDS } from './line-grid.js'

/** A gap smaller than this is no reason to move. */
export const TOO_CLOSE_PINS = 0.1

const FARTHEST_FEET_BOARDS = 12
const FARTHEST_TARGET_BOARDS = 8
/** A change of speed is weighed like this many boards of feet, a change of ball like this many. */
const SPEED_CHANGE_BOARDS = 2
const BALL_CHANGE_BOARDS = 3

/** The line nearest to the last one among those that are as good as the best within `tolerancePins`. */
export function leastMove(
  search: LineSearch,
  profile: BowlerProfile,
  last: { readonly ballIndex: number; readonly aim: Aim },
  tolerancePins = TOO_CLOSE_PINS,
): PricedLine {
  const enough = search.best.worth - tolerancePins
  let nearest: PricedLine = search.best
  let shortest = Number.POSITIVE_INFINITY
  search.perBall.forEach(({ ballIndex, worth: bestOfBall }) => {
    if (bestOfBall < enough) return
    const change = ballIndex === last.ballIndex ? 0 : BALL_CHANGE_BOARDS
    for (const aim of aimsAround(last.aim)) {
      const move =
        change +
        Math.abs(aim.feetBoard - last.aim.feetBoard) +
        Math.abs(aim.targetBoard - last.aim.targetBoard) +
        SPEED_CHANGE_BOARDS * Math.abs(aim.speedStep - last.aim.speedStep)
      if (move >= shortest || !isOffered(aim, profile)) continue
      const worth = search.worthOf(ballIndex, aim)
      if (worth < enough) continue
      shortest = move
      nearest = { ballIndex, aim, worth }
    }
  })
  return nearest
}

function isOffered(aim: Aim, profile: BowlerProfile): boolean {
  const laydown = aim.feetBoard - metresToBoards(profile.slideToLaydownMetres)
  return (
    isWithin(laydown, OFFERED_LAYDOWN_BOARDS) &&
    isWithin(aim.targetBoard, OFFERED_TARGET_BOARDS) &&
    isWithin(aim.targetBoard - laydown, OFFERED_SWING_BOARDS)
  )
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high
}

function* aimsAround(aim: Aim): Generator<Aim> {
  for (let feet = -FARTHEST_FEET_BOARDS; feet <= FARTHEST_FEET_BOARDS; feet += 0.5)
    for (let target = -FARTHEST_TARGET_BOARDS; target <= FARTHEST_TARGET_BOARDS; target += 0.5)
      for (const speedStep of [-1, 0, 1] as const)
        yield { feetBoard: aim.feetBoard + feet, targetBoard: aim.targetBoard + target, speedStep }
}

/** The last first ball thrown on a lane, as the search counts balls; null before the first. */
export function lastFirstBall(
  state: BlockState,
  lane: number,
): { readonly ballIndex: number; readonly aim: Aim; readonly decision: Decision } | null {
  const last = state.throws.findLast(
    (one) => one.spot.lane === lane && one.standingBefore === FULL_RACK && one.decision.release === 'strike',
  )
  if (!last) return null
  const ballIndex = state.setup.bag.findIndex((ball) => ball.id === last.decision.ballId)
  return { ballIndex, aim: last.decision.aim, decision: last.decision }
}
