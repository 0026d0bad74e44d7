import { degreesToRadians, inchesToMetres, metresToInches, poundsToKilograms, radiansToDegrees } from '../../units.js'
import { type CoverFamily, coverFamilies, coverFriction, GRIT_RANGE } from './cover.js'

/** Half of 8.577 in, inside the legal 8.500 to 8.595 in (equipment specifications of the governing bodies). */
export const BALL_RADIUS_METRES = inchesToMetres(8.577 / 2)

/** A drilled ball as its owner and a spinning scale know it. */
export interface BallSpecification {
  readonly id: string
  readonly name: string
  readonly massKilograms: number
  /** Radius of gyration about the low axis, which runs through the pin. */
  readonly radiusOfGyrationMetres: number
  /** Highest less lowest radius of gyration. */
  readonly differentialMetres: number
  /** Highest less middle radius of gyration; 0 for a symmetric core. */
  readonly intermediateDifferentialMetres: number
  /** From the bowler's spin axis at release to the pin. */
  readonly pinAngleRadians: number
  readonly cover: CoverFamily
  /** Grit of the last abrasive the cover was sanded with. */
  readonly surfaceGrit: number
  /** Polished after sanding. */
  readonly polished: boolean
}

interface Limit {
  readonly what: string
  readonly unit: string
  readonly least: number
  readonly most: number
  readonly found: number
  readonly decimals: number
}

const LIMIT_ROUNDING = 1e-9
const LEGAL_FRICTION = 0.32

/**
 * What keeps a ball from being legal, one sentence a fault; an empty list means it may be thrown.
 * Limits: 16 lb, RG 2.46 to 2.80 in, differential 0.060 in, friction 0.32 (equipment specifications of the governing
 * bodies, 2005 to 2018); an intermediate differential cannot exceed the whole one.
 */
export function checkBall(ball: BallSpecification): readonly string[] {
  const faults = limitsOf(ball)
    .filter(({ found, least, most }) => !(found >= least - LIMIT_ROUNDING && found <= most + LIMIT_ROUNDING))
    .map(({ what, unit, least, most, found, decimals }) => {
      const range = `${least.toFixed(decimals)} to ${most.toFixed(decimals)}${unit}`
      return `${what} is ${found.toFixed(decimals)}${unit}, allowed is ${range}.`
    })
  if (!coverFamilies.includes(ball.cover)) {
    return [...faults, `The cover is "${ball.cover}", allowed are ${coverFamilies.join(', ')}.`]
  }
  const friction = coverFriction(ball.cover, ball.surfaceGrit, ball.polished).dryFriction
  if (friction > LEGAL_FRICTION) {
    faults.push(
      `The dry friction of this cover and surface is ${friction.toFixed(3)}, allowed is at most ${LEGAL_FRICTION}.`,
    )
  }
  return faults
}

function limitsOf(ball: BallSpecification): Limit[] {
  const differential = metresToInches(ball.differentialMetres)
  return [
    {
      what: 'The weight',
      unit: ' lb',
      least: 6,
      most: 16,
      found: ball.massKilograms / poundsToKilograms(1),
      decimals: 2,
    },
    {
      what: 'The radius of gyration',
      unit: ' in',
      least: 2.46,
      most: 2.8,
      found: metresToInches(ball.radiusOfGyrationMetres),
      decimals: 3,
    },
    { what: 'The differential', unit: ' in', least: 0, most: 0.06, found: differential, decimals: 3 },
    {
      what: 'The intermediate differential',
      unit: ' in',
      least: 0,
      most: Math.max(0, differential),
      found: metresToInches(ball.intermediateDifferentialMetres),
      decimals: 3,
    },
    {
      what: 'The pin angle',
      unit: ' degrees',
      least: 0,
      most: radiansToDegrees(degreesToRadians(90)),
      found: radiansToDegrees(ball.pinAngleRadians),
      decimals: 1,
    },
    {
      what: 'The surface grit',
      unit: '',
      least: GRIT_RANGE.least,
      most: GRIT_RANGE.most,
      found: ball.surfaceGrit,
      decimals: 0,
    },
  ]
}
