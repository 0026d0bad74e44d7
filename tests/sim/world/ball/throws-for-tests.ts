import { cosine, sine } from '../../../../src/sim/exact-math.js'
import type { RandomSource } from '../../../../src/sim/random.js'
import {
  BOARD_WIDTH_METRES,
  boardToMetres,
  degreesToRadians,
  feetToMetres,
  mphToMetresPerSecond,
  rpmToRadiansPerSecond,
} from '../../../../src/sim/units.js'
import type { Launch } from '../../../../src/sim/world/ball/launch.js'

const ARROWS_FEET = 15

export interface ThrowFigures {
  /** Board at the foul line. */
  readonly laydown: number
  /** Board at the arrows. */
  readonly target: number
  readonly mph?: number
  readonly rpm?: number
  readonly rotationDegrees?: number
  readonly tiltDegrees?: number
  readonly touchdownFeet?: number
}

/** A throw over two boards, with a medium release unless told otherwise. */
export function throwOf(figures: ThrowFigures): Launch {
  const {
    laydown,
    target,
    mph = 17.5,
    rpm = 350,
    rotationDegrees = 52,
    tiltDegrees = 12,
    touchdownFeet = 0.5,
  } = figures
  const slope = ((target - laydown) * BOARD_WIDTH_METRES) / feetToMetres(ARROWS_FEET)
  const length = Math.sqrt(1 + slope * slope)
  const startMetres = feetToMetres(touchdownFeet)
  return {
    startMetres,
    lateralMetres: boardToMetres(laydown) + slope * startMetres,
    directionX: 1 / length,
    directionY: slope / length,
    speedMetresPerSecond: mphToMetresPerSecond(mph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(rpm),
    sineRotation: sine(degreesToRadians(rotationDegrees)),
    cosineRotation: cosine(degreesToRadians(rotationDegrees)),
    sineTilt: sine(degreesToRadians(tiltDegrees)),
    cosineTilt: cosine(degreesToRadians(tiltDegrees)),
  }
}

/** A throw somebody might make: any line across the lane, 16 to 20 mph, 200 to 500 rpm. */
export function drawThrow(random: RandomSource): Launch {
  const within = (least: number, most: number): number => least + (most - least) * random()
  const laydown = within(6, 30)
  return throwOf({
    laydown,
    target: laydown - within(0, 0.35) * laydown,
    mph: within(16, 20),
    rpm: within(200, 500),
    rotationDegrees: within(10, 80),
    tiltDegrees: within(3, 25),
    touchdownFeet: within(0.3, 3),
  })
}
