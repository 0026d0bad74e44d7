import { cosine, sine } from '../../exact-math.js'
import { boardToMetres } from '../../units.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBalls } from '../../world/ball/motion.js'
import type { StepTable } from '../../world/ball/step-table.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import type { ScratchLaunch } from '../../world/bowler/release.js'
import type { OilFilm } from '../../world/lane/film.js'
import { LAYDOWNS, LINES, laydownMetresOf, SWINGS, swingMetresOf } from './line-grid.js'
import { launchOfRelease, pointLaunch } from './line-launch.js'

/** Speeds that are rolled, in the bowler's speed steps from the usual. */
const SPEED_NODES = [-1, 0, 1] as const
/** Place of the usual speed among them. */
export const USUAL_NODE = 1
const OTHER_NODES = [0, 2] as const
/** First every second laydown and swing is rolled at the usual speed; what goes far from the headpin is not looked at closer. */
const COARSE = 2
/** Places at the headpin's row between which lines are rolled one by one. */
const NEAR_METRES: readonly [number, number] = [boardToMetres(8.5), boardToMetres(28)]
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

/** The lines of one laydown are rolled together; of each, two throws for its slopes at the most. */
const outcomes = Array.from({ length: SWINGS }, newRollOutcome)
const swingsRolled = new Uint8Array(SWINGS)

/**
 * Whether every near line is rolled at speeds other than the usual one, or only every second laydown and swing: what
 * another speed changes varies slowly between them. That takes half the time and is a tenth of a pin off (the lines of
 * the usual speed a hundredth), which is enough to see what is worth a closer look.
 */
export type OtherSpeeds = 'rolled' | 'filled-in'

/** Rolls the lines of the grid on a film and writes what came of them into `surface`. */
export function rollLines(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  profile: BowlerProfile,
  surface: LineSurface,
  otherSpeeds: OtherSpeeds,
): void {
  const release = launchOfRelease(profile.strike)
  const launches = Array.from({ length: SWINGS }, () => ({ ...release }))
  const rollSome = (node: number, laydown: number, stride: number, isWanted: (swing: number) => boolean): void => {
    const speed = profile.strike.speedMetresPerSecond + SPEED_NODES[node] * profile.speedStepMetresPerSecond
    let count = 0
    for (let swing = 0; swing < SWINGS; swing += stride) {
      if (!isWanted(swing)) continue
      launches[count].speedMetresPerSecond = speed
      pointLaunch(launches[count], laydownMetresOf(laydown), swingMetresOf(swing))
      swingsRolled[count++] = swing
    }
    rollBalls(film, steps, ball, launches, outcomes, count)
    for (let k = 0; k < count; k++) {
      const at = placeOf(node, laydown, swingsRolled[k])
      surface.lateralMetres[at] = outcomes[k].lateralAtPinsMetres
      surface.tangent[at] = outcomes[k].tangentAtPins
      surface.outermostMetres[at] = outcomes[k].breakpointLateralMetres
    }
  }
  for (let laydown = 0; laydown < LAYDOWNS; laydown += COARSE) rollSome(USUAL_NODE, laydown, COARSE, () => true)
  fillBetween(surface.lateralMetres)
  fillBetween(surface.tangent)
  fillBetween(surface.outermostMetres)
  for (let laydown = 0; laydown < LAYDOWNS; laydown++)
    rollSome(USUAL_NODE, laydown, 1, (swing) => !isCoarse(laydown, swing) && isNear(surface, laydown, swing))
  const stride = otherSpeeds === 'rolled' ? 1 : COARSE
  for (const node of OTHER_NODES)
    for (let laydown = 0; laydown < LAYDOWNS; laydown += stride)
      rollSome(node, laydown, stride, (swing) => hasNearWithin(stride - 1, surface, laydown, swing))
  if (otherSpeeds === 'filled-in') for (const node of OTHER_NODES) fillInChange(surface, node)
  measureSlopes(film, steps, ball, profile, surface)
}

/** Whether a line ends near enough to the headpin to be worth a closer look. */
export function isNear(surface: LineSurface, laydown: number, swing: number): boolean {
  const lateral = surface.lateralMetres[placeOf(USUAL_NODE, laydown, swing)]
  return lateral > NEAR_METRES[0] && lateral < NEAR_METRES[1]
}

const isCoarse = (laydown: number, swing: number): boolean => laydown % COARSE === 0 && swing % COARSE === 0

/** Whether a line, or one as many places away from it, ends near the headpin. */
function hasNearWithin(places: number, surface: LineSurface, laydown: number, swing: number): boolean {
  for (let l = Math.max(0, laydown - places); l <= Math.min(LAYDOWNS - 1, laydown + places); l++)
    for (let s = Math.max(0, swing - places); s <= Math.min(SWINGS - 1, swing + places); s++)
      if (isNear(surface, l, s)) return true
  return false
}

/** Gives the near lines between those rolled at another speed what that speed changes around them. */
function fillInChange(surface: LineSurface, node: number): void {
  const { lateralMetres, tangent, outermostMetres } = surface
  for (let laydown = 0; laydown < LAYDOWNS; laydown++)
    for (let swing = 0; swing < SWINGS; swing++) {
      if (isCoarse(laydown, swing) || !isNear(surface, laydown, swing)) continue
      for (const values of [lateralMetres, tangent, outermostMetres])
        values[placeOf(node, laydown, swing)] =
          values[placeOf(USUAL_NODE, laydown, swing)] + meanChange(values, node, laydown, swing)
    }
}

/** Mean change over the corners of the coarse grid around a line. */
function meanChange(values: Float64Array, node: number, laydown: number, swing: number): number {
  const l0 = laydown - (laydown % COARSE)
  const l1 = laydown + (laydown % COARSE)
  const s0 = swing - (swing % COARSE)
  const s1 = swing + (swing % COARSE)
  const change = (l: number, s: number): number => values[placeOf(node, l, s)] - values[placeOf(USUAL_NODE, l, s)]
  return 0.25 * (change(l0, s0) + change(l0, s1) + change(l1, s0) + change(l1, s1))
}

function placeOf(node: number, laydown: number, swing: number): number {
  return (node * LAYDOWNS + laydown) * SWINGS + swing
}

/** Fills the lines between the coarsely rolled ones by their mean, at every speed. */
function fillBetween(values: Float64Array): void {
  const middle = values.subarray(USUAL_NODE * LINES, (USUAL_NODE + 1) * LINES)
  for (let laydown = 0; laydown < LAYDOWNS; laydown += COARSE)
    for (let swing = 1; swing < SWINGS; swing += COARSE)
      middle[laydown * SWINGS + swing] =
        0.5 * (middle[laydown * SWINGS + swing - 1] + middle[laydown * SWINGS + swing + 1])
  for (let laydown = 1; laydown < LAYDOWNS; laydown += COARSE)
    for (let swing = 0; swing < SWINGS; swing++)
      middle[laydown * SWINGS + swing] =
        0.5 * (middle[(laydown - 1) * SWINGS + swing] + middle[(laydown + 1) * SWINGS + swing])
  for (let node = 0; node < SPEED_NODES.length; node++) if (node !== USUAL_NODE) values.set(middle, node * LINES)
}

function measureSlopes(
  film: OilFilm,
  steps: StepTable,
  ball: BallDynamics,
  profile: BowlerProfile,
  surface: LineSurface,
): void {
  const { strike, error } = profile
  const turned = strike.rotationRadians + error.rotationRadians
  const moreSpin = { spinRadiansPerSecond: strike.spinRadiansPerSecond + error.spinRadiansPerSecond }
  const moreRotation = { sineRotation: sine(turned), cosineRotation: cosine(turned) }
  const release = launchOfRelease(strike)
  const launches: ScratchLaunch[] = Array.from({ length: SWINGS }, (_, k) => ({
    ...release,
    ...(k % 2 === 0 ? moreSpin : moreRotation),
  }))
  for (let laydown = 1; laydown < LAYDOWNS; laydown += SLOPE_STRIDE) {
    let count = 0
    for (let swing = 1; swing < SWINGS; swing += SLOPE_STRIDE) {
      if (!isNear(surface, laydown, swing)) continue
      for (const launch of [launches[2 * count], launches[2 * count + 1]])
        pointLaunch(launch, laydownMetresOf(laydown), swingMetresOf(swing))
      swingsRolled[count++] = swing
    }
    rollBalls(film, steps, ball, launches, outcomes, 2 * count)
    for (let k = 0; k < count; k++) {
      const base = surface.lateralMetres[placeOf(USUAL_NODE, laydown, swingsRolled[k])]
      const bySpin = outcomes[2 * k].lateralAtPinsMetres - base
      const byRotation = outcomes[2 * k + 1].lateralAtPinsMetres - base
      spreadSlope(surface, laydown, swingsRolled[k], bySpin, byRotation)
    }
  }
}

/** Gives the lines around a measured one its slopes. */
function spreadSlope(surface: LineSurface, laydown: number, swing: number, bySpin: number, byRotation: number): void {
  for (let l = Math.max(0, laydown - 1); l <= Math.min(LAYDOWNS - 1, laydown + 1); l++)
    for (let s = Math.max(0, swing - 1); s <= Math.min(SWINGS - 1, swing + 1); s++) {
      surface.perSpinSigma[l * SWINGS + s] = bySpin
      surface.perRotationSigma[l * SWINGS + s] = byRotation
    }
}
