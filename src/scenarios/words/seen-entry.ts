import { arcTangent } from '../../sim/exact-math.js'
import { boardsToMetres, feetToMetres, radiansToDegrees } from '../../sim/units.js'
import { contactBoards, sketchPath } from '../../sim/world/block/seen.js'
import type { ThrowRecord } from '../../sim/world/block/types.js'
import { pinBit } from '../../sim/world/pins/leaves.js'

const HEADPIN = 1
const HEADPIN_FEET = 60
/** A ball that turned later than this was seen to turn too short a way to tell its angle by. */
const LATEST_BREAKPOINT_FEET = 54
/** One that was widest earlier than this, as a ball set down inwards is, hooks only later on: its angle is not told by that. */
const EARLIEST_BREAKPOINT_FEET = 34

/**
 * Entry board and angle as far as an eye at the foul line can tell them: the boards of the call, and the angle at which the
 * path as seen comes to the pins. On 75 throws on a dozen lanes that was 1.07 times the true angle in the middle and between
 * 0.85 and 1.4 times in four cases of five, so it is told to the degree. Empty where the headpin was down or missed.
 */
export function entryWords({ observation, standingBefore }: ThrowRecord): string {
  const boards = contactBoards(observation.contact)
  if (!boards || (standingBefore & pinBit(HEADPIN)) === 0) return ''
  const [from, to] = [Math.ceil(boards[0]), Math.floor(boards[1])]
  const entry = from >= to ? `${to}` : `${from}-${to}`
  const { breakpointFeet } = observation
  if (breakpointFeet < EARLIEST_BREAKPOINT_FEET || breakpointFeet > LATEST_BREAKPOINT_FEET) return entry
  return `${entry} at ${seenAngleDegrees(observation).toFixed(0)} deg`
}

/** Angle to the boards at which the path as seen comes to the headpin, in degrees. */
function seenAngleDegrees(observation: ThrowRecord['observation']): number {
  const path = sketchPath(observation, observation.arrowsBoard)
  const { breakpointFeet, breakpointBoard } = observation
  // The path as seen bends evenly from the breakpoint on, so that it comes in at twice its mean slope.
  const boards = 2 * Math.abs(path[HEADPIN_FEET]! - breakpointBoard)
  return radiansToDegrees(arcTangent(boardsToMetres(boards) / feetToMetres(HEADPIN_FEET - breakpointFeet)))
}
