import { type BallData, bag } from '../../scenarios/files/schema/ball.js'
import { demoBag } from '../../scenarios/library/demo-bag.js'
import { choiceField, type FormField, numberField, textField } from './form.js'

/** Abrasives by the trade's usual grits; common practice, no source. Any other can be typed. */
const USUAL_GRITS = [180, 360, 500, 800, 1000, 1500, 2000, 3000, 4000, 5000, 6000]

const grit: FormField<BallData> = {
  ...numberField<BallData>(
    'Sanded to',
    'grit',
    1,
    0,
    (ball) => ball.surfaceGrit,
    (ball, surfaceGrit) => ({ ...ball, surfaceGrit }),
  ),
  step: (ball, by) => ({
    ...ball,
    surfaceGrit:
      by > 0
        ? (USUAL_GRITS.find((grit) => grit > ball.surfaceGrit) ?? ball.surfaceGrit)
        : (USUAL_GRITS.findLast((grit) => grit < ball.surfaceGrit) ?? ball.surfaceGrit),
  }),
}

/** A ball as its owner knows it; surface first after the name, for it is what changes between blocks. */
export const BALL_FIELDS: readonly FormField<BallData>[] = [
  textField(
    'Name',
    (ball) => ball.name,
    (ball, name) => ({ ...ball, name }),
  ),
  { ...grit, heading: 'Surface' },
  choiceField('Polished', 'polished', [false, true], (polished) => (polished ? 'yes' : 'no')),
  {
    ...choiceField<BallData, 'cover'>('Cover', 'cover', ['solid', 'hybrid', 'pearl', 'urethane', 'plastic']),
    heading: 'Ball',
  },
  numberField(
    'Weight',
    'pounds',
    1,
    1,
    (ball) => ball.weightPounds,
    (ball, weightPounds) => ({ ...ball, weightPounds }),
  ),
  numberField(
    'Radius of gyration',
    'inches',
    0.01,
    3,
    (ball) => ball.radiusOfGyrationInches,
    (ball, radiusOfGyrationInches) => ({ ...ball, radiusOfGyrationInches }),
  ),
  numberField(
    'Differential',
    'inches',
    0.002,
    3,
    (ball) => ball.differentialInches,
    (ball, differentialInches) => ({ ...ball, differentialInches }),
  ),
  numberField(
    'Intermediate differential',
    'inches',
    0.002,
    3,
    (ball) => ball.intermediateDifferentialInches,
    (ball, intermediateDifferentialInches) => ({ ...ball, intermediateDifferentialInches }),
  ),
  numberField(
    'Spin axis to pin',
    'degrees',
    5,
    0,
    (ball) => ball.pinAngleDegrees,
    (ball, pinAngleDegrees) => ({ ...ball, pinAngleDegrees }),
  ),
]

/** The bag to start from: the library's, complete. */
export const startingBag = (): readonly BallData[] => bag.parse(demoBag)

/** A ball to be changed into a new one: an even one of the library's. */
export const newBall = (): BallData => ({ ...startingBag()[1]!, id: '', name: 'my ball' })
