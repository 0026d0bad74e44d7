import { degreesToRadians, inchesToMetres, poundsToKilograms } from '../../../../src/sim/units.js'
import type { CoverFamily } from '../../../../src/sim/world/ball/cover.js'
import type { BallSpecification } from '../../../../src/sim/world/ball/specification.js'

interface TradeFigures {
  readonly cover: CoverFamily
  readonly grit: number
  readonly polished?: boolean
  readonly radiusOfGyrationInches: number
  readonly differentialInches: number
  readonly intermediateDifferentialInches?: number
  readonly pinDegrees: number
}

/** A 15 lb ball from the figures a box or a spinning scale gives. */
export function ballOf(name: string, figures: TradeFigures): BallSpecification {
  return {
    id: name.toLowerCase().replaceAll(' ', '-'),
    name,
    massKilograms: poundsToKilograms(15),
    radiusOfGyrationMetres: inchesToMetres(figures.radiusOfGyrationInches),
    differentialMetres: inchesToMetres(figures.differentialInches),
    intermediateDifferentialMetres: inchesToMetres(figures.intermediateDifferentialInches ?? 0),
    pinAngleRadians: degreesToRadians(figures.pinDegrees),
    cover: figures.cover,
    surfaceGrit: figures.grit,
    polished: figures.polished ?? false,
  }
}

export const sandedSolid = ballOf('sanded strong solid', {
  cover: 'solid',
  grit: 1000,
  radiusOfGyrationInches: 2.48,
  differentialInches: 0.054,
  intermediateDifferentialInches: 0.018,
  pinDegrees: 40,
})

export const symmetricSolid = ballOf('symmetric solid', {
  cover: 'solid',
  grit: 2000,
  radiusOfGyrationInches: 2.5,
  differentialInches: 0.048,
  pinDegrees: 42,
})

export const hybrid = ballOf('asymmetric hybrid', {
  cover: 'hybrid',
  grit: 3000,
  radiusOfGyrationInches: 2.51,
  differentialInches: 0.05,
  intermediateDifferentialInches: 0.014,
  pinDegrees: 45,
})

export const weakPearl = ballOf('weak pearl', {
  cover: 'pearl',
  grit: 4000,
  polished: true,
  radiusOfGyrationInches: 2.57,
  differentialInches: 0.036,
  pinDegrees: 50,
})

export const urethane = ballOf('sanded urethane', {
  cover: 'urethane',
  grit: 1000,
  radiusOfGyrationInches: 2.62,
  differentialInches: 0.022,
  pinDegrees: 50,
})

export const plastic = ballOf('polished plastic', {
  cover: 'plastic',
  grit: 4000,
  polished: true,
  radiusOfGyrationInches: 2.7,
  differentialInches: 0.005,
  pinDegrees: 45,
})

export const bag = [sandedSolid, symmetricSolid, hybrid, weakPearl, urethane, plastic] as const
