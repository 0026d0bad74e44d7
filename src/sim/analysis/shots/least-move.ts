import { metresToBoards } from '../../units.js'
import type { BlockState, Decision } from '../../world/block/types.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import type { Aim } from '../../world/bowler/release.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import type { LineSearch, PricedLine } from './best-line.js'
import { OFFERED_LAYDOWN_BOARDS, OFFERED_SWING_BOARDS, OFFERED_TARGET_BOARDS } from './line-grid.js'

/** A gap smaller than this is no reason to move. */
export const TOO_CLOSE_PINS = 0.1

const FARTHEST_FEET_BOARDS = 12
const FARTHEST_TARGET_BOARDS = 8
/** A change of speed is weighed like this many boards of feet, a change of ball like this many. */
const SPEED_CHANGE_BOARDS = 2
const BALL_CHANGE_BOARDS = 3

interface Change {
  readonly feet: number
  readonly target: number
  readonly speed: number
  /** How far it is, in boards. */
  readonly size: number
}

/** Every change of aim that is looked at, the smallest first. */
const CHANGES: readonly Change[] = (() => {
  const changes: Change[] = []
  for (let feet = -FARTHEST_FEET_BOARDS; feet <= FARTHEST_FEET_BOARDS; feet += 0.5)
    for (let target = -FARTHEST_TARGET_BOARDS; target <= FARTHEST_TARGET_BOARDS; target += 0.5)
      for (let speed = -2; speed <= 2; speed++)
        changes.push({
          feet,
          target,
          speed,
          size: Math.abs(feet) + Math.abs(target) + SPEED_CHANGE_BOARDS * Math.abs(speed),
        })
  return changes.sort((a, b) => a.size - b.size)
})()

/** The line nearest to the last one among those that are as good as the best within `tolerancePins`. */
export function leastMove(
  search: LineSearch,
  profile: BowlerProfile,
  last: { readonly ballIndex: number; readonly aim: Aim },
  tolerancePins = TOO_CLOSE_PINS,
): PricedLine {
  const onSurface = ({ ballIndex, aim }: PricedLine): number => search.worthOf(ballIndex, aim)
  const enough = onSurface(search.best) - tolerancePins
  const good = search.perBall.filter((line) => onSurface(line) >= enough)
  const same = good.filter((line) => line.ballIndex === last.ballIndex)
  const others = good.filter((line) => line.ballIndex !== last.ballIndex)
  const kept = nearestOf(search, profile, same, last.aim, enough)
  const changed = nearestOf(search, profile, others, last.aim, enough)
  if (kept && (!changed || kept.size <= changed.size + BALL_CHANGE_BOARDS)) return kept.line
  return changed?.line ?? search.best
}

function nearestOf(
  search: LineSearch,
  profile: BowlerProfile,
  balls: readonly PricedLine[],
  last: Aim,
  enough: number,
): { readonly line: PricedLine; readonly size: number } | null {
  if (balls.length === 0) return null
  for (const { feet, target, speed, size } of CHANGES) {
    const speedStep = last.speedStep + speed
    if (speedStep !== -1 && speedStep !== 0 && speedStep !== 1) continue
    const aim: Aim = { feetBoard: last.feetBoard + feet, targetBoard: last.targetBoard + target, speedStep }
    if (!isOffered(aim, profile)) continue
    for (const { ballIndex } of balls) {
      const worth = search.worthOf(ballIndex, aim)
      if (worth >= enough) return { line: { ballIndex, aim, worth }, size }
    }
  }
  return null
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
