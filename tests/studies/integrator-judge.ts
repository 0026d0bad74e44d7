import { stream } from '../../src/sim/random.js'
import { metresToBoards, radiansToDegrees } from '../../src/sim/units.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/world/ball/launch.js'
import { rollBall } from '../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { testLanes } from '../sim/world/ball/lanes-for-tests.js'
import { RigidBody } from '../sim/world/ball/rigid-body.js'
import { drawThrow } from '../sim/world/ball/throws-for-tests.js'

const THROWS_A_LANE = 125
const STEP_SECONDS = 4e-4

/** How far the three-scalar reduction strays from the whole rigid body, lane by lane. */
export function run(): void {
  const outcome = newRollOutcome()
  console.log('lane                             throws  bias B   rms B   max B  bias °  rms °   max °')
  const all: number[] = []
  const start = performance.now()
  for (const { name, film } of testLanes()) {
    const random = stream({ seed: name, game: 1, frame: 0, ball: 0, purpose: 'study' })
    const steps = buildStepTable(film)
    const boards: number[] = []
    const degrees: number[] = []
    for (let count = 0; count < THROWS_A_LANE; count++) {
      const specification = bag[count % bag.length]!
      const ball = dynamicsOf(specification)
      const launch = drawThrow(random)
      const phaseRadians = 2 * Math.PI * random()
      rollBall(film, steps, ball, launch, outcome)
      if (outcome.leftLaneMetres < 18.3) continue
      const judge = new RigidBody(film, ball, specification, { stepSeconds: STEP_SECONDS, phaseRadians }).roll(launch)
      boards.push(metresToBoards(outcome.lateralAtPinsMetres - judge.lateralMetres))
      degrees.push(radiansToDegrees(outcome.tangentAtPins - judge.tangent))
    }
    all.push(...boards)
    console.log(`${name.padEnd(32)} ${String(boards.length).padStart(6)} ${figures(boards)} ${figures(degrees)}`)
  }
  console.log(`${'all'.padEnd(32)} ${String(all.length).padStart(6)} ${figures(all)}`)
  console.log(`${((performance.now() - start) / 1000).toFixed(1)} s`)
}

function figures(values: readonly number[]): string {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const rms = Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
  return [mean, rms, Math.max(...values.map(Math.abs))].map((value) => value.toFixed(3).padStart(7)).join(' ')
}
