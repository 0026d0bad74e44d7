import type { BallDynamics } from '../../../../src/sim/world/ball/dynamics.js'
import { frictionCoefficient } from '../../../../src/sim/world/ball/friction.js'
import type { Launch } from '../../../../src/sim/world/ball/launch.js'
import { BALL_RADIUS_METRES } from '../../../../src/sim/world/ball/specification.js'
import type { OilFilm } from '../../../../src/sim/world/lane/film.js'
import { filmAt } from './film-for-judges.js'
import { odexSolver } from './odex.js'

const GRAVITY = 9.80665
const PINS_METRES = 18.288
const FILM_MATCHING_METRES = 6 * 0.3048

export interface JudgedRoll {
  readonly lateralMetres: number
  readonly tangent: number
  readonly speed: number
  readonly seconds: number
  readonly rollStartMetres: number
  /** Largest angle between the slip and its first direction, while slip is above 1 mm/s. */
  readonly slipTurnRadians: number
}

/**
 * The skidding sphere in the plain variables: velocity and horizontal spin as four numbers, each with its own force or
 * torque, over the distance down the lane. Nothing of the reduction is used: slip is formed from velocity and spin anew
 * every time. Solved by the extrapolation code ODEX (Hairer, Nørsett & Wanner, Solving Ordinary Differential
 * Equations I, II.9) to 1e-9.
 */
export function rollByOdex(film: OilFilm, ball: BallDynamics, launch: Launch): JudgedRoll {
  const { directionX, directionY, speedMetresPerSecond: speed, spinRadiansPerSecond: spin } = launch
  const k = 1 / (ball.slipFactor - 1)
  const alongSpin = -spin * launch.sineRotation * launch.cosineTilt
  const acrossSpin = spin * launch.cosineRotation * launch.cosineTilt
  // x, y of the velocity; x, y of the spin; y; film on the track; time
  const start = [
    speed * directionX,
    speed * directionY,
    alongSpin * directionX - acrossSpin * directionY,
    alongSpin * directionY + acrossSpin * directionX,
    launch.lateralMetres,
    0,
    launch.startMetres / (speed * directionX),
  ]
  const slipOf = (state: number[]): [number, number] => [
    state[0]! - BALL_RADIUS_METRES * state[3]!,
    state[1]! + BALL_RADIUS_METRES * state[2]!,
  ]
  const [startSlipX, startSlipY] = slipOf(start)
  const startSlip = Math.hypot(startSlipX, startSlipY)
  /** Slip along its first direction: it passes through 0 as the ball starts to roll. */
  const leftOf = (state: number[]): number => {
    const [x, y] = slipOf(state)
    return (x * startSlipX + y * startSlipY) / startSlip
  }
  const solver = odexSolver(7, 1e-9)
  solver.maxStepSize = 0.1524
  let slipTurnRadians = 0
  let rolling: { readonly x: number; readonly state: number[] } | null = null
  const slopes = (x: number, state: number[]): number[] => {
    const [vx, vy, , , y, carried] = state as [number, number, number, number, number, number, number]
    const [slipX, slipY] = slipOf(state)
    const slip = Math.hypot(slipX, slipY)
    const sign = leftOf(state) < 0 ? -1 : 1
    const bare = filmAt(film, x, y)
    const coefficient = frictionCoefficient(ball.friction, bare + ball.carriedFilmShare * carried, sign < 0 ? 0 : slip)
    const unitX = slip > 1e-12 ? (sign * slipX) / slip : startSlipX / startSlip
    const unitY = slip > 1e-12 ? (sign * slipY) / slip : startSlipY / startSlip
    const force = (coefficient * GRAVITY) / vx
    const torque = force / (k * BALL_RADIUS_METRES)
    return [
      -force * unitX,
      -force * unitY,
      -torque * unitY,
      torque * unitX,
      vy / vx,
      (bare - carried) / FILM_MATCHING_METRES,
      1 / vx,
    ]
  }
  const solved = solver.solve(slopes, launch.startMetres, start, PINS_METRES, (count, from, to, state, dense) => {
    const [slipX, slipY] = slipOf(state)
    const slip = Math.hypot(slipX, slipY)
    if (slip > 1e-3) {
      slipTurnRadians = Math.max(
        slipTurnRadians,
        Math.abs(slipX * startSlipY - slipY * startSlipX) / (slip * startSlip),
      )
    }
    if (count === 1 || leftOf(state) > 0) return undefined
    let before = from
    let after = to
    const at = (x: number): number[] => start.map((_, index) => dense(index, x))
    for (let halving = 0; halving < 50; halving++) {
      const middle = 0.5 * (before + after)
      if (leftOf(at(middle)) > 0) before = middle
      else after = middle
    }
    rolling = { x: after, state: at(after) }
    return false
  })
  const end = rolling as { readonly x: number; readonly state: number[] } | null
  const [x, state] = end === null ? [PINS_METRES, solved.y] : [end.x, end.state]
  const [vx, vy] = state as [number, number]
  const remaining = PINS_METRES - x
  return {
    lateralMetres: state[4]! + (remaining * vy) / vx,
    tangent: vy / vx,
    speed: Math.hypot(vx, vy),
    seconds: state[6]! + remaining / vx,
    rollStartMetres: end === null ? Number.POSITIVE_INFINITY : x,
    slipTurnRadians,
  }
}
