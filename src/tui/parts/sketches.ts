import { metresToBoards } from '../../sim/units.js'
import { sketchPath } from '../../sim/world/block/seen.js'
import type { ThrowRecord } from '../../sim/world/block/types.js'
import type { BowlerProfile } from '../../sim/world/bowler/profile.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import type { Trace, TraceLook } from './lane.js'

/** Newest first. */
const LOOKS: readonly TraceLook[] = ['last', 'older', 'oldest']

/** Board the ball is laid down on, for feet on a board. */
export const laydownBoard = (profile: BowlerProfile, feetBoard: number): number =>
  feetBoard - metresToBoards(profile.slideToLaydownMetres)

/** A throw as memory has it, drawn from what was seen alone; `upToFeet` while the ball is still rolling. */
export function sketchTrace(record: ThrowRecord, profile: BowlerProfile, look: TraceLook, upToFeet = 60): Trace {
  const boards = sketchPath(record.observation, laydownBoard(profile, record.decision.aim.feetBoard))
  return {
    boards: boards.map((board, feet) => (feet <= upToFeet ? board : Number.NaN)),
    firstFeet: 0,
    stepFeet: 1,
    look,
  }
}

/** The last throws on a lane worth comparing, oldest first so that the newest lies on top. */
export function recentSketches(throws: readonly ThrowRecord[], lane: number, profile: BowlerProfile): Trace[] {
  return throws
    .filter((record) => record.spot.lane === lane && record.standingBefore === FULL_RACK)
    .slice(-LOOKS.length)
    .reverse()
    .map((record, age) => sketchTrace(record, profile, LOOKS[age]!))
    .reverse()
}
