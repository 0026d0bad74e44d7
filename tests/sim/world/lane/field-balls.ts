import { degreesToRadians, inchesToMetres, poundsToKilograms } from '../../../../src/sim/units.js'
import { coverUptake } from '../../../../src/sim/world/ball/cover.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import type { BallSpecification } from '../../../../src/sim/world/ball/specification.js'
import type { FieldBall } from './field-play.js'

/** A 15 lb ball with what matters to oil written in the trade's units. */
export function testBall(
  id: string,
  cover: BallSpecification['cover'],
  surfaceGrit: number,
  polished: boolean,
  [gyrationInches, differentialInches, intermediateInches, pinDegrees]: readonly [number, number, number, number],
): BallSpecification {
  return {
    id,
    name: id,
    massKilograms: poundsToKilograms(15),
    radiusOfGyrationMetres: inchesToMetres(gyrationInches),
    differentialMetres: inchesToMetres(differentialInches),
    intermediateDifferentialMetres: inchesToMetres(intermediateInches),
    pinAngleRadians: degreesToRadians(pinDegrees),
    cover,
    surfaceGrit,
    polished,
  }
}

export const strongSolid = testBall('strong solid', 'solid', 500, false, [2.48, 0.054, 0.018, 40])
export const evenSolid = testBall('even solid', 'solid', 2000, false, [2.5, 0.048, 0, 42])
export const hybrid = testBall('hybrid', 'hybrid', 3000, false, [2.51, 0.05, 0.014, 45])
export const pearl = testBall('pearl', 'pearl', 4000, true, [2.57, 0.036, 0, 50])
export const urethane = testBall('urethane', 'urethane', 1000, false, [2.62, 0.022, 0, 50])
export const plastic = testBall('plastic', 'plastic', 4000, true, [2.7, 0.005, 0, 45])

const wearing = (ball: BallSpecification): FieldBall => {
  const dynamics = dynamicsOf(ball)
  return { coverUptake: dynamics.uptake, freshCoverShare: dynamics.freshCoverShare }
}

/** What competitors throw today: strong covers on cores that flare. */
export const flaringField: readonly FieldBall[] = [strongSolid, evenSolid, hybrid, pearl].map(wearing)
export const urethaneField: readonly FieldBall[] = [wearing(urethane)]
/** Before 1980: covers that hardly lift oil and do not soak it up, pancake weight blocks without flare. */
export const weakUnflaringField: readonly FieldBall[] = [wearing(plastic)]
/**
 * The 1980s: covers that lift as much as a sanded urethane ball of today on cores without flare. That they soaked
 * up almost nothing, 0.1 of what they lifted, is an assumption.
 */
export const strongUnflaringField: readonly FieldBall[] = [
  {
    coverUptake: { pickupShare: coverUptake('urethane', 500, false).pickupShare, layDownShare: 0.9 },
    freshCoverShare: wearing(plastic).freshCoverShare,
  },
]
