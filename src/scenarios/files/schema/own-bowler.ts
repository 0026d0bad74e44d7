import { z } from 'zod'
import {
  boardsToMetres,
  degreesToRadians,
  feetToMetres,
  mphToMetresPerSecond,
  rpmToRadiansPerSecond,
} from '../../../sim/units.js'
import type { BowlerProfile, ErrorSpread, ReleaseNumbers } from '../../../sim/world/bowler/profile.js'
import { line, numberFrom, oneOf, table } from './fields.js'

const release = table(
  {
    speedMph: numberFrom(8, 28, 'mph'),
    spinRpm: numberFrom(0, 700, 'rpm'),
    rotationDegrees: numberFrom(0, 90, 'degrees'),
    tiltDegrees: numberFrom(0, 60, 'degrees'),
    loftFeet: numberFrom(0, 6, 'feet'),
  },
  'a release',
)

const spread = table(
  {
    laydownBoards: numberFrom(0, 5, 'boards'),
    angleDegrees: numberFrom(0, 3, 'degrees'),
    speedMph: numberFrom(0, 4, 'mph'),
    spinRpm: numberFrom(0, 100, 'rpm'),
    rotationDegrees: numberFrom(0, 30, 'degrees'),
    lateralAngleCorrelation: numberFrom(-0.99, 0.99).default(0),
    speedSpinCorrelation: numberFrom(-0.99, 0.99).default(0),
  },
  'a spread of misses',
)

/** A bowler written figure by figure, as a coach measures one; spreads are standard deviations. */
export const ownBowlerFields = table(
  {
    level: z.literal('own', { error: () => 'own' }),
    name: line(40),
    hand: oneOf('right', 'left'),
    strike: release,
    spare: release,
    error: spread,
    spareError: spread,
    speedStepMph: numberFrom(0.1, 4, 'mph').default(0.75),
    offNormalErrorFactor: numberFrom(1, 3).default(1.25),
    slideToLaydownBoards: numberFrom(0, 15, 'boards').default(7),
  },
  'a bowler',
)

export function ownProfileFromData(data: z.output<typeof ownBowlerFields>): BowlerProfile {
  return {
    id: 'own',
    name: data.name,
    hand: data.hand,
    level: 'own',
    strike: releaseFromData(data.strike),
    spare: releaseFromData(data.spare),
    error: spreadFromData(data.error),
    spareError: spreadFromData(data.spareError),
    speedStepMetresPerSecond: mphToMetresPerSecond(data.speedStepMph),
    offNormalErrorFactor: data.offNormalErrorFactor,
    slideToLaydownMetres: boardsToMetres(data.slideToLaydownBoards),
  }
}

function releaseFromData(data: z.output<typeof release>): ReleaseNumbers {
  return {
    speedMetresPerSecond: mphToMetresPerSecond(data.speedMph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(data.spinRpm),
    rotationRadians: degreesToRadians(data.rotationDegrees),
    tiltRadians: degreesToRadians(data.tiltDegrees),
    loftMetres: feetToMetres(data.loftFeet),
  }
}

function spreadFromData(data: z.output<typeof spread>): ErrorSpread {
  return {
    lateralMetres: boardsToMetres(data.laydownBoards),
    angleRadians: degreesToRadians(data.angleDegrees),
    speedMetresPerSecond: mphToMetresPerSecond(data.speedMph),
    spinRadiansPerSecond: rpmToRadiansPerSecond(data.spinRpm),
    rotationRadians: degreesToRadians(data.rotationDegrees),
    lateralAngleCorrelation: data.lateralAngleCorrelation,
    speedSpinCorrelation: data.speedSpinCorrelation,
  }
}
