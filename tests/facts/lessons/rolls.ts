import { metresToBoard, metresToFeet } from '../../../src/sim/units.js'
import { dynamicsOf } from '../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, type RollOutcome, rollBall } from '../../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../../src/sim/world/ball/specification.js'
import { buildStepTable, type StepTable } from '../../../src/sim/world/ball/step-table.js'
import type { BowlerProfile } from '../../../src/sim/world/bowler/profile.js'
import { type Aim, intendedLaunch } from '../../../src/sim/world/bowler/release.js'
import { FILM_ROWS, type OilFilm } from '../../../src/sim/world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../../src/sim/world/lane/geometry.js'

/** Where one throw without a miss goes, in boards, feet and degrees. */
export interface Rolled {
  readonly entryBoard: number
  readonly entryDegrees: number
  readonly breakpointBoard: number
  readonly breakpointFeet: number
  readonly isInGutter: boolean
  readonly boardAt: (feet: number) => number
}

const outcome: RollOutcome = newRollOutcome()
const stepTables = new WeakMap<OilFilm, StepTable>()

function stepsOf(film: OilFilm): StepTable {
  const known = stepTables.get(film) ?? buildStepTable(film)
  stepTables.set(film, known)
  return known
}

/** One throw as meant, of a right-hander. */
export function rolledAsMeant(film: OilFilm, ball: BallSpecification, bowler: BowlerProfile, aim: Aim): Rolled {
  const path = new Float64Array(FILM_ROWS)
  rollBall(film, stepsOf(film), dynamicsOf(ball), intendedLaunch(bowler, aim, 'strike'), outcome, path)
  return {
    entryBoard: metresToBoard(outcome.lateralAtPinsMetres),
    entryDegrees: (Math.atan(outcome.tangentAtPins) * 180) / Math.PI,
    breakpointBoard: metresToBoard(outcome.breakpointLateralMetres),
    breakpointFeet: metresToFeet(outcome.breakpointMetres),
    isInGutter: outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES,
    boardAt: (feet) => metresToBoard(path[Math.round(feet * 2)]!),
  }
}
