import { describe, expect, it } from 'vitest'
import { stream } from '../../../../src/sim/random.js'
import { metresToBoards, radiansToDegrees } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { bag, ballOf } from './bag-for-tests.js'
import { testLanes } from './lanes-for-tests.js'
import { RigidBody } from './rigid-body.js'
import { drawThrow, throwOf } from './throws-for-tests.js'

const THROWS_A_LANE = 125
const STEP_SECONDS = 4e-4

/** Judge: the whole rigid body with three moments, attitude and precession; same friction law and film. */
describe('the three-scalar reduction against a whole rigid body', () => {
  const outcome = newRollOutcome()
  const rolls = testLanes().flatMap(({ name, film }) => {
    const random = stream({ seed: name, game: 1, frame: 0, ball: 0, purpose: 'study' })
    const steps = buildStepTable(film)
    return Array.from({ length: THROWS_A_LANE }, (_, index) => {
      const specification = bag[index % bag.length]!
      const ball = dynamicsOf(specification)
      const launch = drawThrow(random)
      const phaseRadians = 2 * Math.PI * random()
      rollBall(film, steps, ball, launch, outcome)
      if (outcome.leftLaneMetres < Number.POSITIVE_INFINITY) return []
      const judge = new RigidBody(film, ball, specification, { stepSeconds: STEP_SECONDS, phaseRadians }).roll(launch)
      return [
        {
          boards: metresToBoards(outcome.lateralAtPinsMetres - judge.lateralMetres),
          degrees: radiansToDegrees(outcome.tangentAtPins - judge.tangent),
        },
      ]
    }).flat()
  })
  const rootMeanSquare = (values: readonly number[]): number =>
    Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
  const boards = rolls.map((roll) => roll.boards)

  it('throws nearly a thousand balls that stay on the lane', () => {
    expect(rolls.length).toBeGreaterThan(850)
  })

  it('agrees to 0.05 board rms and 0.25 board at most', () => {
    expect(rootMeanSquare(boards)).toBeLessThan(0.05)
    expect(Math.max(...boards.map(Math.abs))).toBeLessThan(0.25)
  })

  it('has no lean to either side', () => {
    expect(Math.abs(boards.reduce((sum, value) => sum + value, 0) / boards.length)).toBeLessThan(0.02)
  })

  it('agrees on the angle to the wobble of the axis', () => {
    expect(rootMeanSquare(rolls.map((roll) => roll.degrees))).toBeLessThan(0.2)
  })
})

describe('the rigid body itself', () => {
  const sphere = ballOf('even ball', {
    cover: 'solid',
    grit: 2000,
    radiusOfGyrationInches: 2.5,
    differentialInches: 0,
    pinDegrees: 45,
  })
  const lane = testLanes()[0]!.film

  it('keeps its result when its step is halved', () => {
    const launch = throwOf({ laydown: 18, target: 12 })
    const at = (stepSeconds: number): number =>
      new RigidBody(lane, dynamicsOf(bag[0]), bag[0], { stepSeconds, phaseRadians: 1 }).roll(launch).lateralMetres
    expect(Math.abs(metresToBoards(at(STEP_SECONDS) - at(STEP_SECONDS / 2)))).toBeLessThan(0.002)
  })

  it('draws the parabola of constant friction', () => {
    // Closed form: r(t) = v t − ½ μ g u t² (Hopkins & Patterson, Am. J. Phys. 45, 1977).
    const launch = throwOf({ laydown: 20, target: 20, rotationDegrees: 60, touchdownFeet: 0 })
    const coefficient = 0.03
    const options = { stepSeconds: STEP_SECONDS, phaseRadians: 0, constantFriction: coefficient }
    const roll = new RigidBody(lane, dynamicsOf(sphere), sphere, options).roll(launch)
    const rollSpeed = launch.spinRadiansPerSecond * 0.1089279 * launch.cosineTilt
    const along = launch.speedMetresPerSecond - rollSpeed * launch.cosineRotation
    const across = -rollSpeed * launch.sineRotation
    const slip = Math.hypot(along, across)
    const pull = 0.5 * coefficient * 9.80665
    const x = launch.speedMetresPerSecond * roll.seconds - (pull * along * roll.seconds ** 2) / slip
    const y = launch.lateralMetres - (pull * across * roll.seconds ** 2) / slip
    expect(x).toBeCloseTo(18.288, 4)
    expect(y).toBeCloseTo(roll.lateralMetres, 4)
  })
})
