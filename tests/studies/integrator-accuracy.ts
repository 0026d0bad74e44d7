import { stream } from '../../src/sim/random.js'
import { metresToBoards, radiansToDegrees } from '../../src/sim/units.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/world/ball/launch.js'
import { rollBall } from '../../src/sim/world/ball/motion.js'
import { buildStepTable, EASY_STEPS, EXACTING_STEPS, type StepRule } from '../../src/sim/world/ball/step-table.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { testLanes } from '../sim/world/ball/lanes-for-tests.js'
import { rollByOdex } from '../sim/world/ball/sphere-by-odex.js'
import { drawThrow } from '../sim/world/ball/throws-for-tests.js'

const THROWS_A_LANE = 150

/** How far the fast integrator strays from ODEX on the same equations, lane by lane, and what a roll costs. */
export function run(): void {
  for (const [name, rules] of Object.entries({ exacting: EXACTING_STEPS, easy: EASY_STEPS })) {
    console.log(`\n${name} steps`)
    tabulate(rules)
  }
}

function tabulate(rules: readonly StepRule[]): void {
  const outcome = newRollOutcome()
  console.log('lane                           steps  bias B   rms B   p95 B   max B  max deg  µs/roll')
  for (const { name, film } of testLanes()) {
    const random = stream({ seed: name, game: 0, frame: 0, ball: 0, purpose: 'study' })
    const steps = buildStepTable(film, rules)
    const errors: number[] = []
    let worstDegrees = 0
    for (let count = 0; count < THROWS_A_LANE; count++) {
      const ball = dynamicsOf(bag[count % bag.length]!)
      const launch = drawThrow(random)
      rollBall(film, steps, ball, launch, outcome)
      if (outcome.leftLaneMetres < 18.3) continue
      const judge = rollByOdex(film, ball, launch)
      errors.push(metresToBoards(outcome.lateralAtPinsMetres - judge.lateralMetres))
      worstDegrees = Math.max(worstDegrees, radiansToDegrees(Math.abs(outcome.tangentAtPins - judge.tangent)))
    }
    const sizes = errors.map(Math.abs).sort((a, b) => a - b)
    const mean = errors.reduce((sum, value) => sum + value, 0) / errors.length
    const rms = Math.sqrt(errors.reduce((sum, value) => sum + value * value, 0) / errors.length)
    let stepCount = 0
    for (let row = 0; row < 120; row += steps[row]!) stepCount++
    console.log(
      `${name.padEnd(30)} ${String(stepCount).padStart(4)} ${[mean, rms, sizes[Math.floor(sizes.length * 0.95)]!, sizes.at(-1)!, worstDegrees].map((value) => value.toFixed(4).padStart(8)).join('')} ${microseconds(film, steps).toFixed(2).padStart(7)}   (${errors.length})`,
    )
  }
}

function microseconds(film: Parameters<typeof rollBall>[0], steps: Parameters<typeof rollBall>[1]): number {
  const outcome = newRollOutcome()
  const ball = dynamicsOf(bag[2]!)
  const random = stream({ seed: 'time', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const launches = Array.from({ length: 64 }, () => drawThrow(random))
  const rolls = 40_000
  const start = performance.now()
  for (let count = 0; count < rolls; count++) rollBall(film, steps, ball, launches[count & 63]!, outcome)
  return ((performance.now() - start) * 1000) / rolls
}
