import { stream } from '../../src/sim/random.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/world/ball/launch.js'
import { MOST_TOGETHER, rollBall, rollBalls } from '../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { FILM_ROWS } from '../../src/sim/world/lane/film.js'
import { freshLane, wearLane } from '../../src/sim/world/lane/wear.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { testLanes } from '../sim/world/ball/lanes-for-tests.js'
import { rollByOdex } from '../sim/world/ball/sphere-by-odex.js'
import { drawThrow } from '../sim/world/ball/throws-for-tests.js'
import { type BenchRow, timeBatches, timeEach, timesOf } from './measure.js'

const THROWS = 4096

function throwsOnLanes() {
  const random = stream({ seed: 'bench', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const lanes = testLanes().map(({ film }) => ({ film, steps: buildStepTable(film) }))
  const balls = bag.map((ball) => dynamicsOf(ball))
  return Array.from({ length: THROWS }, (_, index) => ({
    ...lanes[index % lanes.length]!,
    ball: balls[index % balls.length]!,
    launch: drawThrow(random),
  }))
}

/** One trajectory from hand to pins, mixed lanes, balls and releases, beside ODEX on the same equations. */
export function benchTrajectory(): BenchRow[] {
  const throws = throwsOnLanes()
  const outcome = newRollOutcome()
  const roll = (run: number): void => {
    const { film, steps, ball, launch } = throws[run % THROWS]!
    rollBall(film, steps, ball, launch, outcome)
  }
  const judge = (run: number): void => {
    const { film, ball, launch } = throws[run % THROWS]!
    rollByOdex(film, ball, launch)
  }
  const fast = timeBatches(roll, 200, 1000, 40)
  const group = throws.slice(0, MOST_TOGETHER / 2)
  const launches = group.map(({ launch }) => ({ ...launch, startMetres: group[0]!.launch.startMetres }))
  const outcomes = launches.map(newRollOutcome)
  const rollTogether = (run: number): void => {
    const { film, steps, ball } = throws[run % THROWS]!
    rollBalls(film, steps, ball, launches, outcomes, launches.length)
  }
  const each = timeBatches(rollTogether, 200, 50, 40)
  return [
    {
      name: 'trajectory',
      unit: 'µs',
      measured: timesOf(fast, 1000),
      goal: { most: 4, of: 'median' },
      beside: { name: 'ODEX at 1e-9', median: timesOf(timeEach(judge, 120, 20), 1000).median },
    },
    {
      name: `one of ${launches.length} rolled together`,
      unit: 'µs',
      measured: timesOf(each, 1000 / launches.length),
      beside: { name: 'alone', median: timesOf(fast, 1000).median },
    },
  ]
}

/** One ball's wear of a lane, the old state kept; and the step table of the film it leaves. */
export function benchWear(): BenchRow[] {
  const lanes = testLanes().map(({ film }) => freshLane(film))
  const passes = throwsOnLanes()
    .slice(0, 64)
    .map(({ film, steps, ball, launch }) => {
      const path = new Float64Array(FILM_ROWS)
      rollBall(film, steps, ball, launch, newRollOutcome(), path)
      return { path, coverUptake: ball.uptake, freshCoverShare: ball.freshCoverShare }
    })
  const wear = (run: number): unknown => wearLane(lanes[run % lanes.length]!, passes[run % passes.length]!)
  const table = (run: number): unknown => buildStepTable(lanes[run % lanes.length]!.film)
  return [
    { name: 'wear by one ball', unit: 'µs', measured: timesOf(timeBatches(wear, 60, 50, 10), 1000) },
    { name: 'step table of a film', unit: 'µs', measured: timesOf(timeBatches(table, 60, 50, 10), 1000) },
  ]
}
