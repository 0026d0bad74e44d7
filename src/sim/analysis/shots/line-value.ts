import { BOARD_WIDTH_METRES } from '../../units.js'
import type { ErrorSpread } from '../../world/bowler/profile.js'
import { lookUpWorth, type ValueTable } from '../value/value-table.js'
import { ANGLE_NODES, angleNodes, angleWeights, NARROW_SIGMA } from './angle-mixture.js'
import { LAYDOWN_STEP_METRES, LAYDOWNS, LINES, SWING_STEP_METRES, SWINGS } from './line-grid.js'
import { type LineSurface, USUAL_NODE } from './line-surface.js'

/** Gauss-Hermite nodes for the parallel miss, whose effect is nearly linear. */
export const LATERAL_NODES = [-1.7320508075688772, 0, 1.7320508075688772] as const
export const LATERAL_WEIGHTS = [1 / 6, 2 / 3, 1 / 6] as const

/** Slope over one speed step, softer, usual and firmer, from the places at all three: of the parabola through them. */
const SPEED_SLOPES = [
  [-1.5, 2, -0.5],
  [-0.5, 0, 0.5],
  [0.5, -2, 1.5],
] as const

export interface LineValuing {
  readonly table: ValueTable
  readonly gutterWorth: number
  readonly error: ErrorSpread
  readonly speedStepMetresPerSecond: number
  /** Factor on every error for throwing one speed step off the usual. */
  readonly offNormalErrorFactor: number
  /** Tangent of the angle error is its radians; a swing of the target per radian, in metres. */
  readonly swingMetresPerRadian: number
}

/**
 * Expected worth of aiming at grid place (`laydown`, `swing`), both fractional, at a speed step of -1, 0 or 1:
 * parallel and angle misses walk over the surface, speed, spin and rotation smear the place at the pins.
 */
export function expectedWorth(
  surface: LineSurface,
  laydown: number,
  swing: number,
  speedStep: number,
  valuing: LineValuing,
): number {
  const { error, table } = valuing
  const scale = speedStep === 0 ? 1 : valuing.offNormalErrorFactor
  const own = (USUAL_NODE + speedStep) * LINES
  const [bySlower, byUsual, byFaster] = SPEED_SLOPES[speedStep + 1]
  const lateralStep = (scale * error.lateralMetres) / LAYDOWN_STEP_METRES
  const swingStep = (scale * error.angleRadians * valuing.swingMetresPerRadian) / SWING_STEP_METRES
  const rho = error.lateralAngleCorrelation
  const free = Math.sqrt(1 - rho * rho)
  const narrowStep = NARROW_SIGMA * free * swingStep
  const speedSigmaSteps = (scale * error.speedMetresPerSecond) / valuing.speedStepMetresPerSecond
  let sum = 0
  for (let a = 0; a < LATERAL_NODES.length; a++) {
    const atLaydown = clamp(laydown + LATERAL_NODES[a] * lateralStep, LAYDOWNS - 1)
    const l0 = atLaydown < LAYDOWNS - 1 ? atLaydown | 0 : LAYDOWNS - 2
    const fl = atLaydown - l0
    for (let b = 0; b < ANGLE_NODES; b++) {
      const z = rho * LATERAL_NODES[a] + free * angleNodes[b]
      const atSwing = clamp(swing + z * swingStep, SWINGS - 1)
      const s0 = atSwing < SWINGS - 1 ? atSwing | 0 : SWINGS - 2
      const fs = atSwing - s0
      const corner = l0 * SWINGS + s0
      const w00 = (1 - fl) * (1 - fs)
      const w01 = (1 - fl) * fs
      const w10 = fl * (1 - fs)
      const w11 = fl * fs
      const weight = LATERAL_WEIGHTS[a] * angleWeights[b]
      const outermost = mix(surface.outermostMetres, own + corner, w00, w01, w10, w11)
      const outermostSlope = surface.outermostMetres[own + corner + 1] - surface.outermostMetres[own + corner]
      const onLane = shareAbove(outermost, Math.abs(outermostSlope * narrowStep))
      sum += weight * (1 - onLane) * valuing.gutterWorth
      if (onLane === 0) continue
      const lateral = mix(surface.lateralMetres, own + corner, w00, w01, w10, w11)
      const tangent = mix(surface.tangent, own + corner, w00, w01, w10, w11)
      const byAngle =
        narrowStep *
        ((1 - fl) * (surface.lateralMetres[own + corner + 1] - surface.lateralMetres[own + corner]) +
          fl * (surface.lateralMetres[own + corner + SWINGS + 1] - surface.lateralMetres[own + corner + SWINGS]))
      const bySpeed =
        speedSigmaSteps *
        (bySlower * mix(surface.lateralMetres, corner, w00, w01, w10, w11) +
          byUsual * mix(surface.lateralMetres, LINES + corner, w00, w01, w10, w11) +
          byFaster * mix(surface.lateralMetres, 2 * LINES + corner, w00, w01, w10, w11))
      const bySpin = scale * surface.perSpinSigma[corner]
      const byRotation = scale * surface.perRotationSigma[corner]
      const spread = Math.sqrt(
        byAngle * byAngle +
          bySpeed * bySpeed +
          bySpin * bySpin +
          2 * error.speedSpinCorrelation * bySpeed * bySpin +
          byRotation * byRotation,
      )
      sum += weight * onLane * lookUpWorth(table, lateral, tangent, spread)
    }
  }
  return sum
}

/** Worth of a line that ends far from the headpin, without its misses: enough to know that it is no choice. */
export function roughWorth(surface: LineSurface, laydown: number, swing: number, valuing: LineValuing): number {
  const at = LINES + Math.round(laydown) * SWINGS + Math.round(swing)
  if (surface.outermostMetres[at] < 0) return valuing.gutterWorth
  return lookUpWorth(valuing.table, surface.lateralMetres[at], surface.tangent[at], BOARD_WIDTH_METRES)
}

/** About the share of a spread of one standard deviation `sigma` around `middle` that lies above 0. */
export function shareAbove(middle: number, sigma: number): number {
  const reach = 1.5 * sigma
  if (middle >= reach) return 1
  if (middle <= -reach) return 0
  return 0.5 + middle / (2 * reach)
}

function mix(values: Float64Array, at: number, w00: number, w01: number, w10: number, w11: number): number {
  return w00 * values[at] + w01 * values[at + 1] + w10 * values[at + SWINGS] + w11 * values[at + SWINGS + 1]
}

function clamp(value: number, most: number): number {
  return value < 0 ? 0 : Math.min(value, most)
}
