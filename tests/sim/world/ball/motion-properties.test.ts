import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LANE_WIDTH_METRES } from '../../../../src/sim/units.js'
import { type BallDynamics, dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { type Launch, newRollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { MOST_TOGETHER, rollBall, rollBalls } from '../../../../src/sim/world/ball/motion.js'
import { BALL_RADIUS_METRES } from '../../../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { emptyFilm, FILM_ROW_METRES, FILM_ROWS, mirrorFilm } from '../../../../src/sim/world/lane/film.js'
import { bag } from './bag-for-tests.js'
import { testLanes } from './lanes-for-tests.js'
import { throwOf } from './throws-for-tests.js'

const lanes = testLanes().map(({ name, film }) => ({
  film,
  steps: buildStepTable(film),
  [fc.toStringMethod]: () => name,
}))

const aLane = fc.constantFrom(...lanes)
const aBall = fc.constantFrom(...bag).map((ball) => dynamicsOf(ball))
/** Any release a hand can give, hooking either way, from anywhere on the lane. */
const aLaunch = fc
  .record({
    laydown: fc.double({ min: 2, max: 38, noNaN: true }),
    aside: fc.double({ min: -8, max: 8, noNaN: true }),
    mph: fc.double({ min: 10, max: 24, noNaN: true }),
    rpm: fc.double({ min: 0, max: 600, noNaN: true }),
    rotationDegrees: fc.double({ min: -90, max: 90, noNaN: true }),
    tiltDegrees: fc.double({ min: 0, max: 40, noNaN: true }),
    touchdownFeet: fc.double({ min: 0, max: 6, noNaN: true }),
  })
  .map(({ laydown, aside, ...release }) => throwOf({ laydown, target: laydown + aside, ...release }))

function slipAtStart(launch: Launch): number {
  const rollSpeed = launch.spinRadiansPerSecond * BALL_RADIUS_METRES * launch.cosineTilt
  const along = launch.speedMetresPerSecond - rollSpeed * launch.cosineRotation
  return Math.hypot(along, rollSpeed * launch.sineRotation)
}

/** Energy per kilogram in travel and horizontal spin, from the velocity and the roll velocity v − slip. */
function energy(ball: BallDynamics, speed: number, rollSpeed: number): number {
  return 0.5 * (speed * speed + (rollSpeed * rollSpeed) / (ball.slipFactor - 1))
}

describe('a rolled ball', () => {
  const outcome = newRollOutcome()
  const path = new Float64Array(FILM_ROWS)

  it('never gains energy, and loses all its slip or none too much', () => {
    fc.assert(
      fc.property(aLane, aBall, aLaunch, ({ film, steps }, ball, launch) => {
        rollBall(film, steps, ball, launch, outcome)
        const speed = outcome.speedAtPinsMetresPerSecond
        const before = energy(
          ball,
          launch.speedMetresPerSecond,
          launch.spinRadiansPerSecond * BALL_RADIUS_METRES * launch.cosineTilt,
        )
        expect(outcome.slipAtPins).toBeGreaterThanOrEqual(0)
        expect(outcome.slipAtPins).toBeLessThanOrEqual(slipAtStart(launch))
        if (outcome.slipAtPins === 0) expect(energy(ball, speed, speed)).toBeLessThanOrEqual(before * (1 + 1e-12))
        expect(0.5 * speed * speed).toBeLessThanOrEqual(before)
      }),
      { numRuns: 500, seed: 17 },
    )
  })

  it('thrown the other way round in a mirror comes out mirrored', () => {
    const mirrored = newRollOutcome()
    const mirroredPath = new Float64Array(FILM_ROWS)
    fc.assert(
      fc.property(aLane, aBall, aLaunch, ({ film, steps }, ball, launch) => {
        rollBall(film, steps, ball, launch, outcome, path)
        const other = mirrorFilm(film)
        rollBall(
          other,
          buildStepTable(other),
          ball,
          {
            ...launch,
            lateralMetres: LANE_WIDTH_METRES - launch.lateralMetres,
            directionY: -launch.directionY,
            sineRotation: -launch.sineRotation,
          },
          mirrored,
          mirroredPath,
        )
        expect(LANE_WIDTH_METRES - mirrored.lateralAtPinsMetres).toBeCloseTo(outcome.lateralAtPinsMetres, 9)
        expect(-mirrored.tangentAtPins).toBeCloseTo(outcome.tangentAtPins, 9)
        expect(mirrored.timeToPinsSeconds).toBeCloseTo(outcome.timeToPinsSeconds, 9)
        for (let row = 0; row < FILM_ROWS; row++) {
          if (Number.isNaN(path[row]!)) expect(mirroredPath[row]).toBeNaN()
          else expect(LANE_WIDTH_METRES - mirroredPath[row]!).toBeCloseTo(path[row]!, 9)
        }
      }),
      { numRuns: 200, seed: 17 },
    )
  })

  it('reports a path that fits its outcome', () => {
    fc.assert(
      fc.property(aLane, aBall, aLaunch, ({ film, steps }, ball, launch) => {
        rollBall(film, steps, ball, launch, outcome, path)
        const touched = [...path.keys()].filter((row) => !Number.isNaN(path[row]!))
        for (const row of touched) {
          const metres = (row + 0.5) * FILM_ROW_METRES
          expect(metres).toBeGreaterThanOrEqual(launch.startMetres - 1e-12)
          expect(metres).toBeLessThan(Math.min(outcome.leftLaneMetres, 18.288) + 1e-12)
          expect(path[row]!).toBeGreaterThan(-1e-4)
          expect(path[row]!).toBeLessThan(LANE_WIDTH_METRES + 1e-4)
          expect(path[row]!).toBeGreaterThan(outcome.breakpointLateralMetres - 1e-3)
        }
        const span = (Math.min(outcome.leftLaneMetres, 18.288) - launch.startMetres) / FILM_ROW_METRES
        expect(Math.abs(touched.length - span)).toBeLessThan(1.01)
        if (outcome.leftLaneMetres === Number.POSITIVE_INFINITY) {
          const end = path[FILM_ROWS - 1]! + 0.5 * FILM_ROW_METRES * outcome.tangentAtPins
          expect(Math.abs(end - outcome.lateralAtPinsMetres)).toBeLessThan(5e-4)
        }
      }),
      { numRuns: 500, seed: 17 },
    )
  })

  it('is the same whether or not its path is kept', () => {
    const bare = newRollOutcome()
    fc.assert(
      fc.property(aLane, aBall, aLaunch, ({ film, steps }, ball, launch) => {
        rollBall(film, steps, ball, launch, outcome, path)
        rollBall(film, steps, ball, launch, bare)
        expect(bare).toEqual(outcome)
      }),
      { numRuns: 200, seed: 17 },
    )
  })

  it('comes out the same, to the last bit, among others as alone', () => {
    const some = fc.array(aLaunch, { minLength: 1, maxLength: MOST_TOGETHER })
    fc.assert(
      fc.property(aLane, aBall, some, ({ film, steps }, ball, launches) => {
        const { startMetres } = launches[0]!
        const fromOnePlace = launches.map((launch) => ({ ...launch, startMetres }))
        const together = launches.map(newRollOutcome)
        rollBalls(film, steps, ball, fromOnePlace, together, launches.length)
        for (const [k, launch] of fromOnePlace.entries()) {
          rollBall(film, steps, ball, launch, outcome)
          expect(together[k]).toEqual(outcome)
        }
      }),
      { numRuns: 60, seed: 17 },
    )
  })

  it('is not rolled with too many others, nor with one that touches down elsewhere', () => {
    const { film, steps } = lanes[0]!
    const launch = throwOf({ laydown: 20, target: 15 })
    const roll = (launches: readonly Launch[]): void =>
      rollBalls(film, steps, dynamicsOf(bag[0]), launches, launches.map(newRollOutcome), launches.length)
    expect(() => roll(Array.from({ length: MOST_TOGETHER + 1 }, () => launch))).toThrow(RangeError)
    expect(() => roll([launch, { ...launch, startMetres: launch.startMetres + 0.1 }])).toThrow(RangeError)
    expect(() => roll([])).not.toThrow()
  })

  it('hooks less on an even lane the more oil there is', () => {
    const thin = emptyFilm()
    const thick = emptyFilm()
    const steps = buildStepTable(thin)
    fc.assert(
      fc.property(
        aBall,
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 100, max: 600, noNaN: true }),
        (ball, microns, more, rpm) => {
          thin.microns.fill(microns)
          thick.microns.fill(microns + more)
          const launch = throwOf({ laydown: 20, target: 20, rpm })
          rollBall(thin, steps, ball, launch, outcome)
          const onThin = outcome.lateralAtPinsMetres
          rollBall(thick, steps, ball, launch, outcome)
          expect(outcome.lateralAtPinsMetres).toBeLessThanOrEqual(onThin)
        },
      ),
    )
  })

  it('rolls at once when it is let go rolling', () => {
    const speed = 8
    const launch = {
      ...throwOf({ laydown: 20, target: 20, rotationDegrees: 0, tiltDegrees: 0 }),
      speedMetresPerSecond: speed,
      spinRadiansPerSecond: speed / BALL_RADIUS_METRES,
    }
    rollBall(lanes[0]!.film, lanes[0]!.steps, dynamicsOf(bag[0]), launch, outcome, path)
    expect(outcome.rollStartMetres).toBeCloseTo(launch.startMetres, 9)
    expect(outcome.speedAtPinsMetresPerSecond).toBeCloseTo(speed, 9)
    expect(outcome.lateralAtPinsMetres).toBeCloseTo(launch.lateralMetres, 9)
    expect(outcome.timeToPinsSeconds).toBeCloseTo(18.288 / speed, 9)
  })
})
