import type { BallDynamics } from '../ball/dynamics.js'
import { newRollOutcome } from '../ball/launch.js'
import { rollBall } from '../ball/motion.js'
import type { StepTable } from '../ball/step-table.js'
import type { BowlerProfile } from '../bowler/profile.js'
import { ARROWS_METRES } from '../bowler/release.js'
import { cosine, sine } from '../exact-math.js'
import type { OilFilm } from '../lane/film.js'
import { BOARD_WIDTH_METRES } from '../units.js'
import {
  FIRST_TARGET_BOARD,
  LAST_TARGET_BOARD,
  LAYDOWNS,
  LINES,
  laydownBoardOf,
  laydownMetresOf,
  SWINGS,
  swingBoardsOf,
  swingMetresOf,
} from './line-grid.js'
import { pointLaunch, scratchLaunch } from './line-launch.js'

/** Speeds that are rolled, in the bowler's speed steps from the usual: each step's place and slope lie between two. */
export const SPEED_NODES = [-1.5, -0.5, 0.5, 1.5] as const
/** Standard deviations of the aiming error beyond the playable targets that are rolled too, so that no miss is clipped. */
const HALO_SIGMAS = 4.5
/** Spin and rotation slopes vary slowly: they are measured on every third laydown and swing. */
const SLOPE_STRIDE = 3

/**
 * Where one ball of one bowler goes from every line of the grid, without error: lateral place and tangent at the pins
 * and the outermost place of the path, for each speed node; and how far one standard deviation of spin and of rotation
 * moves the place at the pins. It does not depend on how the result is valued nor on the size of the aiming errors.
 */
export interface LineSurface {
  readonly lateralMetres: Float64Array
  readonly tangent: Float64Array
  readonly outermostMetres: Float64Array
  readonly perSpinSigma: Float64Array
  readonly perRotationSigma: Float64Array
}

export function newLineSurface(): LineSurface {
  return {
    lateralMetres: new Float64Array(SPEED_NODES.length * LINES),
    tangent: new Float64Array(SPEED_NODES.length * LINES),
    outermostMetres: new Float64Array(SPEED_NODES.length * LINES),
    perSpinSigma: new Float64Array(LINES),
    perRotationSigma: new Float64Array(LINES),
  }
}

const outcome = newRollOutcome()

/** Rolls every line of the grid on a film and writes what came of it into `surface`. */
export function rollLines(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  profile: BowlerProfile,
  surface: LineSurface,
): void {
  const launch = scratchLaunch(profile.strike)
  const haloBoards = haloOf(profile)
  for (let node = 0; node < SPEED_NODES.length; node++) {
    launch.speedMetresPerSecond =
      profile.strike.speedMetresPerSecond + SPEED_NODES[node] * profile.speedStepMetresPerSecond
    for (let laydown = 0; laydown < LAYDOWNS; laydown++)
      for (let swing = 0; swing < SWINGS; swing++) {
        const at = (node * LAYDOWNS + laydown) * SWINGS + swing
        if (!isRolled(laydown, swing, haloBoards)) {
          surface.lateralMetres[at] = Number.NaN
          continue
        }
        pointLaunch(launch, laydownMetresOf(laydown), swingMetresOf(swing))
        rollBall(film, steps, ball, launch, outcome)
        surface.lateralMetres[at] = outcome.lateralAtPinsMetres
        surface.tangent[at] = outcome.tangentAtPins
        surface.outermostMetres[at] = outcome.breakpointLateralMetres
      }
  }
  measureSlopes(film, steps, ball, profile, surface)
}

function haloOf({ error, offNormalErrorFactor }: BowlerProfile): number {
  const angleMetres = error.angleRadians * ARROWS_METRES
  const sigma = Math.sqrt(error.lateralMetres * error.lateralMetres + angleMetres * angleMetres)
  return (HALO_SIGMAS * offNormalErrorFactor * sigma) / BOARD_WIDTH_METRES
}

/** True for the lines that are rolled: the playable ones and their halo. */
function isRolled(laydown: number, swing: number, haloBoards: number): boolean {
  const target = laydownBoardOf(laydown) + swingBoardsOf(swing)
  return target >= FIRST_TARGET_BOARD - haloBoards && target <= LAST_TARGET_BOARD + haloBoards
}

function measureSlopes(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  profile: BowlerProfile,
  surface: LineSurface,
): void {
  const { strike, error } = profile
  const middle = 1
  const launch = scratchLaunch(strike)
  const haloBoards = haloOf(profile)
  launch.speedMetresPerSecond = strike.speedMetresPerSecond + SPEED_NODES[middle] * profile.speedStepMetresPerSecond
  const turned = strike.rotationRadians + error.rotationRadians
  const sineTurned = sine(turned)
  const cosineTurned = cosine(turned)
  const { sineRotation, cosineRotation } = launch
  for (let laydown = 0; laydown < LAYDOWNS; laydown += SLOPE_STRIDE)
    for (let swing = 0; swing < SWINGS; swing += SLOPE_STRIDE) {
      if (!isRolled(laydown, swing, haloBoards)) continue
      const base = surface.lateralMetres[(middle * LAYDOWNS + laydown) * SWINGS + swing]
      pointLaunch(launch, laydownMetresOf(laydown), swingMetresOf(swing))
      launch.spinRadiansPerSecond = strike.spinRadiansPerSecond + error.spinRadiansPerSecond
      rollBall(film, steps, ball, launch, outcome)
      const bySpin = outcome.lateralAtPinsMetres - base
      launch.spinRadiansPerSecond = strike.spinRadiansPerSecond
      launch.sineRotation = sineTurned
      launch.cosineRotation = cosineTurned
      rollBall(film, steps, ball, launch, outcome)
      launch.sineRotation = sineRotation
      launch.cosineRotation = cosineRotation
      spreadSlope(surface, laydown, swing, bySpin, outcome.lateralAtPinsMetres - base)
    }
}

/** Gives the lines around a measured one its slopes. */
function spreadSlope(surface: LineSurface, laydown: number, swing: number, bySpin: number, byRotation: number): void {
  const reach = SLOPE_STRIDE - 1
  for (let l = Math.max(0, laydown - reach); l <= Math.min(LAYDOWNS - 1, laydown + reach); l++)
    for (let s = Math.max(0, swing - reach); s <= Math.min(SWINGS - 1, swing + reach); s++) {
      surface.perSpinSigma[l * SWINGS + s] = bySpin
      surface.perRotationSigma[l * SWINGS + s] = byRotation
    }
}
