import { seenEndBoard } from '../../scenarios/words/missed-side.js'
import { metresToBoards } from '../../sim/units.js'
import { sketchPath } from '../../sim/world/block/seen.js'
import type { ThrowRecord } from '../../sim/world/block/types.js'
import type { BowlerProfile } from '../../sim/world/bowler/profile.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import type { Trace, TraceLook } from '../draw/lane-picture.js'

const ARROWS_FEET = 15
/** Newest first. */
const LOOKS: readonly TraceLook[] = ['last', 'older', 'oldest']

/** Board the ball is laid down on, for feet on a board. */
export const laydownBoard = (profile: BowlerProfile, feetBoard: number): number =>
  feetBoard - metresToBoards(profile.slideToLaydownMetres)

/** A throw as memory has it, drawn from what was seen alone; `upToFeet` while the ball is still rolling. */
export function sketchTrace(record: ThrowRecord, profile: BowlerProfile, look: TraceLook, upToFeet = 60): Trace {
  const boards = seenBoards(record, laydownBoard(profile, record.decision.aim.feetBoard))
  return {
    boards: boards.map((board, feet) => (feet <= upToFeet ? board : Number.NaN)),
    firstFeet: 0,
    stepFeet: 1,
    look,
  }
}

/** Boards foot by foot; a ball at a spare, which the call at the headpin tells little of, goes on to where it was seen to end. */
function seenBoards({ observation, standingBefore }: ThrowRecord, laydown: number): number[] {
  const boards = sketchPath(observation, laydown)
  const { arrowsBoard, breakpointFeet, breakpointBoard, contact } = observation
  if (standingBefore === FULL_RACK || contact === 'gutter') return boards
  const end = seenEndBoard(observation)
  const isOut = breakpointFeet > ARROWS_FEET
  const [from, fromBoard] = isOut ? [breakpointFeet, breakpointBoard] : [ARROWS_FEET, arrowsBoard]
  return boards.map((board, feet) =>
    feet <= from ? board : fromBoard + ((end - fromBoard) * (feet - from)) / (boards.length - 1 - from),
  )
}

/** The last throw on a lane and the first balls before it worth comparing, oldest first so that the newest lies on top. */
export function recentSketches(throws: readonly ThrowRecord[], lane: number, profile: BowlerProfile): Trace[] {
  return throws
    .filter(({ spot }) => spot.lane === lane)
    .filter(({ standingBefore }, index, all) => standingBefore === FULL_RACK || index === all.length - 1)
    .slice(-LOOKS.length)
    .reverse()
    .map((record, age) => sketchTrace(record, profile, LOOKS[age]!))
    .reverse()
}
