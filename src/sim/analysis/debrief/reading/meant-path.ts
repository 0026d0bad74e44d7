import { arcTangent } from '../../../exact-math.js'
import { metresToBoard, metresToFeet } from '../../../units.js'
import { dynamicsOf } from '../../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../world/ball/motion.js'
import type { BlockState, Decision } from '../../../world/block/types.js'
import { intendedLaunch } from '../../../world/bowler/release.js'
import { FILM_ROWS } from '../../../world/lane/film.js'
import { laneInPlay } from '../../oracle/known-choice.js'

/** The way a choice would have gone without a miss, on the oil as it was. Boards from the bowler's own side. */
export interface MeantPath {
  /** Lateral metres from the bowler's own edge at each half foot's middle; NaN where the ball is not on the lane. */
  readonly path: Float64Array
  readonly entryBoard: number
  readonly entryAngleRadians: number
  readonly breakpointBoard: number
  readonly breakpointFeet: number
  /** Infinity where it stays on the lane. */
  readonly leftLaneFeet: number
}

const outcome = newRollOutcome()

/** Rolls a choice without a miss on the lane of the coming throw. */
export function meantPath(before: BlockState, { ballId, aim, release }: Decision): MeantPath {
  const { setup, spot } = before
  const ball = setup.bag.find((one) => one.id === ballId)
  if (!spot || !ball) throw new RangeError(`There is no coming throw, or no ball "${ballId}" in the bag.`)
  const { film, steps } = laneInPlay(setup, before.lanes[spot.lane])
  const path = new Float64Array(FILM_ROWS)
  rollBall(film, steps, dynamicsOf(ball), intendedLaunch(setup.bowler, aim, release), outcome, path)
  return {
    path,
    entryBoard: metresToBoard(outcome.lateralAtPinsMetres),
    entryAngleRadians: arcTangent(outcome.tangentAtPins),
    breakpointBoard: metresToBoard(outcome.breakpointLateralMetres),
    breakpointFeet: metresToFeet(outcome.breakpointMetres),
    leftLaneFeet: metresToFeet(outcome.leftLaneMetres),
  }
}
