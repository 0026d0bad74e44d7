import type { BallDynamics } from '../../../../src/sim/world/ball/dynamics.js'
import { coreOf, spinRadiusOfGyration } from '../../../../src/sim/world/ball/flare.js'
import { frictionCoefficient } from '../../../../src/sim/world/ball/friction.js'
import type { Launch } from '../../../../src/sim/world/ball/launch.js'
import { BALL_RADIUS_METRES, type BallSpecification } from '../../../../src/sim/world/ball/specification.js'
import type { OilFilm } from '../../../../src/sim/world/lane/film.js'
import { filmAt } from './film-for-judges.js'

const GRAVITY = 9.80665
const PINS_METRES = 18.288
const FILM_MATCHING_METRES = 6 * 0.3048
/** Slip below which friction gives way smoothly, so that rolling needs no second set of equations. */
const ROLLING_SLIP = 0.01
const STATES = 12

export interface RigidBodyOptions {
  readonly stepSeconds: number
  /** Turn of the core about the spin axis as the ball is let go. */
  readonly phaseRadians: number
  /** Centre of mass from the centre of the sphere, along the spin axis towards the bowler's left, in metres. */
  readonly massOffsetMetres?: number
  /** One coefficient of friction everywhere, in place of film and cover. */
  readonly constantFriction?: number
}

export interface RigidBodyRoll {
  readonly lateralMetres: number
  readonly tangent: number
  readonly speed: number
  readonly seconds: number
}

/**
 * The whole rigid body: three unequal moments, attitude as a quaternion, angular momentum in the frame of the lane,
 * one contact point with Coulomb friction (the equations of Huston et al., J. Appl. Mech. 46, 1979, and Frohlich,
 * Am. J. Phys. 72, 2004, written with angular momentum so that no Euler cross terms appear). Classical Runge-Kutta.
 * With an offset centre of mass the normal force takes the centripetal term only.
 */
export class RigidBody {
  private readonly state = new Float64Array(STATES)
  private readonly slope = new Float64Array(STATES)
  private readonly sum = new Float64Array(STATES)
  private readonly trial = new Float64Array(STATES)
  private readonly moments: readonly [number, number, number]
  private readonly spinMoment: number
  private readonly axis: readonly [number, number, number]

  constructor(
    private readonly film: OilFilm,
    private readonly ball: BallDynamics,
    specification: BallSpecification,
    private readonly options: RigidBodyOptions,
  ) {
    const core = coreOf(
      specification.radiusOfGyrationMetres,
      specification.differentialMetres,
      specification.intermediateDifferentialMetres,
      specification.pinAngleRadians,
    )
    this.moments = [
      ball.massKilograms * core.lowMetres ** 2,
      ball.massKilograms * core.middleMetres ** 2,
      ball.massKilograms * core.highMetres ** 2,
    ]
    this.spinMoment = ball.massKilograms * spinRadiusOfGyration(core) ** 2
    this.axis = core.spinAxis
  }

  roll(launch: Launch): RigidBodyRoll {
    const { state, options } = this
    const { stepSeconds } = options
    this.release(launch)
    let seconds = launch.startMetres / (launch.speedMetresPerSecond * launch.directionX)
    let before = [...state]
    while (state[0]! < PINS_METRES) {
      before = [...state]
      this.step(stepSeconds)
      seconds += stepSeconds
    }
    const over = (state[0]! - PINS_METRES) / (state[0]! - before[0]!)
    const [vx, vy] = [state[2]!, state[3]!]
    return {
      lateralMetres: state[1]! - over * (state[1]! - before[1]!),
      tangent: vy / vx,
      speed: Math.hypot(vx, vy),
      seconds: seconds - over * stepSeconds,
    }
  }

  /** Angular momentum I_s·W along the release axis; the core's own spin axis is turned onto it. */
  private release(launch: Launch): void {
    const { directionX, directionY } = launch
    const along = -launch.sineRotation * launch.cosineTilt
    const across = launch.cosineRotation * launch.cosineTilt
    const target = [along * directionX - across * directionY, along * directionY + across * directionX, launch.sineTilt]
    const turn = quaternionBetween(this.axis, target)
    const half = 0.5 * this.options.phaseRadians
    const phase = [Math.cos(half), ...target.map((value) => value * Math.sin(half))]
    const attitude = multiply(phase, turn)
    const momentum = this.spinMoment * launch.spinRadiansPerSecond
    this.state.set([
      launch.startMetres,
      launch.lateralMetres,
      launch.speedMetresPerSecond * directionX,
      launch.speedMetresPerSecond * directionY,
      ...attitude,
      ...target.map((value) => value * momentum),
      0,
    ])
  }

  private step(dt: number): void {
    const { state, slope, sum, trial } = this
    this.slopesAt(state)
    for (let i = 0; i < STATES; i++) {
      sum[i] = slope[i]!
      trial[i] = state[i]! + 0.5 * dt * slope[i]!
    }
    this.slopesAt(trial)
    for (let i = 0; i < STATES; i++) {
      sum[i]! += 2 * slope[i]!
      trial[i] = state[i]! + 0.5 * dt * slope[i]!
    }
    this.slopesAt(trial)
    for (let i = 0; i < STATES; i++) {
      sum[i]! += 2 * slope[i]!
      trial[i] = state[i]! + dt * slope[i]!
    }
    this.slopesAt(trial)
    for (let i = 0; i < STATES; i++) state[i]! += (dt / 6) * (sum[i]! + slope[i]!)
  }

  private slopesAt(s: Float64Array): void {
    const { ball, moments, slope } = this
    const vx = s[2]!
    const vy = s[3]!
    const qw = s[4]!
    const qx = s[5]!
    const qy = s[6]!
    const qz = s[7]!
    const inverseNorm = 2 / (qw * qw + qx * qx + qy * qy + qz * qz)
    // Columns of the rotation from core to lane.
    const m11 = 1 - inverseNorm * (qy * qy + qz * qz)
    const m12 = inverseNorm * (qx * qy - qw * qz)
    const m13 = inverseNorm * (qx * qz + qw * qy)
    const m21 = inverseNorm * (qx * qy + qw * qz)
    const m22 = 1 - inverseNorm * (qx * qx + qz * qz)
    const m23 = inverseNorm * (qy * qz - qw * qx)
    const m31 = inverseNorm * (qx * qz - qw * qy)
    const m32 = inverseNorm * (qy * qz + qw * qx)
    const m33 = 1 - inverseNorm * (qx * qx + qy * qy)
    const lx = s[8]!
    const ly = s[9]!
    const lz = s[10]!
    const a = (m11 * lx + m21 * ly + m31 * lz) / moments[0]
    const b = (m12 * lx + m22 * ly + m32 * lz) / moments[1]
    const c = (m13 * lx + m23 * ly + m33 * lz) / moments[2]
    const wx = m11 * a + m12 * b + m13 * c
    const wy = m21 * a + m22 * b + m23 * c
    const wz = m31 * a + m32 * b + m33 * c

    const offset = -(this.options.massOffsetMetres ?? 0)
    const [axisA, axisB, axisC] = this.axis
    const dx = offset * (m11 * axisA + m12 * axisB + m13 * axisC)
    const dy = offset * (m21 * axisA + m22 * axisB + m23 * axisC)
    const dz = offset * (m31 * axisA + m32 * axisB + m33 * axisC)
    const spinOnOffset = wx * dx + wy * dy + wz * dz
    const spinSquared = wx * wx + wy * wy + wz * wz
    const normal = ball.massKilograms * (GRAVITY + wz * spinOnOffset - dz * spinSquared)

    // From the centre of mass to the contact.
    const rx = -dx
    const ry = -dy
    const rz = -BALL_RADIUS_METRES - dz
    const slipX = vx + wy * rz - wz * ry
    const slipY = vy + wz * rx - wx * rz
    const slip = Math.sqrt(slipX * slipX + slipY * slipY)
    const bare = filmAt(this.film, s[0]!, s[1]!)
    const coefficient =
      this.options.constantFriction ?? frictionCoefficient(ball.friction, bare + ball.carriedFilmShare * s[11]!, slip)
    const force = (coefficient * normal) / Math.sqrt(slip * slip + ROLLING_SLIP * ROLLING_SLIP)
    const fx = -force * slipX
    const fy = -force * slipY

    // The place is that of the sphere's middle, the velocity that of the centre of mass.
    slope[0] = vx - (wy * dz - wz * dy)
    slope[1] = vy - (wz * dx - wx * dz)
    slope[2] = fx / ball.massKilograms
    slope[3] = fy / ball.massKilograms
    slope[4] = 0.5 * (-wx * qx - wy * qy - wz * qz)
    slope[5] = 0.5 * (wx * qw + wy * qz - wz * qy)
    slope[6] = 0.5 * (wy * qw + wz * qx - wx * qz)
    slope[7] = 0.5 * (wz * qw + wx * qy - wy * qx)
    slope[8] = ry * normal - rz * fy
    slope[9] = rz * fx - rx * normal
    slope[10] = rx * fy - ry * fx
    slope[11] = ((bare - s[11]!) / FILM_MATCHING_METRES) * vx
  }
}

function multiply(p: readonly number[], q: readonly number[]): number[] {
  const [a, b, c, d] = p as [number, number, number, number]
  const [e, f, g, h] = q as [number, number, number, number]
  return [
    a * e - b * f - c * g - d * h,
    a * f + b * e + c * h - d * g,
    a * g - b * h + c * e + d * f,
    a * h + b * g - c * f + d * e,
  ]
}

/** The shortest turn that takes one unit vector onto another. */
function quaternionBetween(from: readonly number[], to: readonly number[]): number[] {
  const [a, b, c] = from as [number, number, number]
  const [d, e, f] = to as [number, number, number]
  const raw = [1 + a * d + b * e + c * f, b * f - c * e, c * d - a * f, a * e - b * d]
  const length = Math.hypot(...raw)
  return raw.map((value) => value / length)
}
