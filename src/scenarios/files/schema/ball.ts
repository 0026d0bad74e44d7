import type { z } from 'zod'
import { degreesToRadians, inchesToMetres, poundsToKilograms } from '../../../sim/units.js'
import { type BallSpecification, checkBall } from '../../../sim/world/ball/specification.js'
import { sentenceIssue } from '../text/problems.js'
import { identifier, line, listOf, numberFrom, oneOf, table, yesOrNo } from './fields.js'

const ballFields = table(
  {
    id: identifier(),
    name: line(60),
    cover: oneOf('solid', 'hybrid', 'pearl', 'urethane', 'plastic'),
    surfaceGrit: numberFrom(180, 6000, 'grit'),
    polished: yesOrNo().default(false),
    weightPounds: numberFrom(6, 16, 'pounds'),
    radiusOfGyrationInches: numberFrom(2.3, 3, 'inches'),
    differentialInches: numberFrom(0, 0.1, 'inches'),
    intermediateDifferentialInches: numberFrom(0, 0.1, 'inches').default(0),
    pinAngleDegrees: numberFrom(0, 90, 'degrees').default(45),
  },
  'a ball',
)

export type BallData = z.output<typeof ballFields>

/** A ball as written, in SI. */
export function ballFromData(ball: BallData): BallSpecification {
  return {
    id: ball.id,
    name: ball.name,
    massKilograms: poundsToKilograms(ball.weightPounds),
    radiusOfGyrationMetres: inchesToMetres(ball.radiusOfGyrationInches),
    differentialMetres: inchesToMetres(ball.differentialInches),
    intermediateDifferentialMetres: inchesToMetres(ball.intermediateDifferentialInches),
    pinAngleRadians: degreesToRadians(ball.pinAngleDegrees),
    cover: ball.cover,
    surfaceGrit: ball.surfaceGrit,
    polished: ball.polished,
  }
}

/** A ball the rules of the sport allow. */
const legalBall = ballFields.superRefine((ball, context) => {
  for (const sentence of checkBall(ballFromData(ball))) context.addIssue(sentenceIssue([], sentence))
})

const differentBalls = (least: number) =>
  listOf(legalBall, least, 8, 'balls').superRefine((balls, context) => {
    balls.forEach((ball, index) => {
      if (balls.findIndex((other) => other.id === ball.id) < index) {
        context.addIssue(sentenceIssue([index, 'id'], `Another ball here is already called ${ball.id}.`))
      }
    })
  })

/** The player's balls. */
export const bag = differentBalls(1)
/** Balls that only the other bowlers on the lanes throw. */
export const fieldBag = differentBalls(0)
