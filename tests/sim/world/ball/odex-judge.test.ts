import { describe, expect, it } from 'vitest'
import { stream } from '../../../../src/sim/random.js'
import { metresToBoards, metresToFeet, radiansToDegrees } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable, EASY_STEPS } from '../../../../src/sim/world/ball/step-table.js'
import { bag } from './bag-for-tests.js'
import { testLanes } from './lanes-for-tests.js'
import { rollByOdex } from './sphere-by-odex.js'
import { drawThrow } from './throws-for-tests.js'

const THROWS_A_LANE = 48

/**
 * Judge: ODEX (Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I) on velocity, spin, place, film and time,
 * with slip formed anew at every evaluation.
 */
describe.each(testLanes())('the fast integrator against ODEX on $name', ({ name, film }) => {
  const random = stream({ seed: name, game: 0, frame: 0, ball: 0, purpose: 'study' })
  const steps = buildStepTable(film)
  const outcome = newRollOutcome()
  const rolls = Array.from({ length: THROWS_A_LANE }, (_, index) => {
    const ball = dynamicsOf(bag[index % bag.length]!)
    const launch = drawThrow(random)
    rollBall(film, steps, ball, launch, outcome)
    return { ball, launch, fast: { ...outcome }, judge: rollByOdex(film, ball, launch) }
  }).filter(({ fast }) => fast.leftLaneMetres === Number.POSITIVE_INFINITY)

  it('comes within 0.03 board, 0.02 degree and 1 ms at the pins', () => {
    expect(rolls.length).toBeGreaterThan(THROWS_A_LANE / 2)
    for (const { fast, judge } of rolls) {
      expect(Math.abs(metresToBoards(fast.lateralAtPinsMetres - judge.lateralMetres))).toBeLessThan(0.03)
      expect(radiansToDegrees(Math.abs(fast.tangentAtPins - judge.tangent))).toBeLessThan(0.02)
      expect(Math.abs(fast.timeToPinsSeconds - judge.seconds)).toBeLessThan(1e-3)
      expect(Math.abs(fast.speedAtPinsMetresPerSecond - judge.speed)).toBeLessThan(0.005)
    }
  })

  it('comes within 0.1 board and 0.05 degree in the easy steps of lanes as they might be', () => {
    const easySteps = buildStepTable(film, EASY_STEPS)
    for (const { ball, launch, judge } of rolls) {
      rollBall(film, easySteps, ball, launch, outcome)
      expect(Math.abs(metresToBoards(outcome.lateralAtPinsMetres - judge.lateralMetres))).toBeLessThan(0.1)
      expect(radiansToDegrees(Math.abs(outcome.tangentAtPins - judge.tangent))).toBeLessThan(0.05)
    }
  })

  it('starts to roll within 0.15 ft of the judge', () => {
    for (const { fast, judge } of rolls) {
      if (Math.max(fast.rollStartMetres, judge.rollStartMetres) === Number.POSITIVE_INFINITY) continue
      expect(Math.abs(metresToFeet(fast.rollStartMetres - judge.rollStartMetres))).toBeLessThan(0.15)
    }
  })

  it('is right that the slip never turns', () => {
    // The classic property of a sphere under Coulomb friction of any strength (Hopkins & Patterson, Am. J. Phys. 45, 1977).
    for (const { judge } of rolls) expect(judge.slipTurnRadians).toBeLessThan(1e-6)
  })
})
