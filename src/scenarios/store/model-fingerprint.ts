import { createHash } from 'node:crypto'
import { stream } from '../../sim/random.js'
import { dynamicsOf } from '../../sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../sim/world/ball/motion.js'
import { buildStepTable } from '../../sim/world/ball/step-table.js'
import { intendedLaunch } from '../../sim/world/bowler/release.js'
import { FILM_ROWS } from '../../sim/world/lane/film.js'
import { layPattern } from '../../sim/world/lane/pattern.js'
import { freshLane, wearLane } from '../../sim/world/lane/wear.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { drawRackNature } from '../../sim/world/pins/nature.js'
import { throwAtRack } from '../../sim/world/pins/rack.js'
import { scenarioFrom } from '../files/scenario/scenario.js'
import { locateNowhere } from '../files/text/source-text.js'
import { builtInScenario } from '../library/library.js'

const PROBED_SCENARIO = 'flat-forty-five'
const PROBED_OFFSETS_METRES = [-0.02, 0.05, 0.09]

let known: string | undefined

/**
 * Names the model by what it does: a digest of exact results (every ball of a bag down a lane it wears, racks hit at
 * three places). Two programs with one fingerprint replay each other's records; a change in any law of motion, wear
 * or pins gives another.
 */
export function modelFingerprint(): string {
  known ??= digestOfProbes()
  return known
}

function digestOfProbes(): string {
  const digest = createHash('sha256')
  const { setup } = scenarioFrom(PROBED_SCENARIO, locateNowhere(PROBED_SCENARIO, builtInScenario(PROBED_SCENARIO)))
  const [{ oil }] = setup.lanes
  if (oil.kind !== 'pattern') throw new Error(`${PROBED_SCENARIO} has no written oil to probe.`)
  let lane = freshLane(layPattern(oil.pattern))
  const outcome = newRollOutcome()
  for (const ball of setup.bag) {
    const dynamics = dynamicsOf(ball)
    const path = new Float64Array(FILM_ROWS)
    const launch = intendedLaunch(setup.bowler, { feetBoard: 24, targetBoard: 12, speedStep: 0 }, 'strike')
    rollBall(lane.film, buildStepTable(lane.film), dynamics, launch, outcome, path)
    digest.update(Float64Array.from(Object.values(outcome)))
    lane = wearLane(lane, { path, coverUptake: dynamics.uptake, freshCoverShare: dynamics.freshCoverShare })
  }
  digest.update(lane.film.microns)
  PROBED_OFFSETS_METRES.forEach((offsetMetres, index) => {
    const nature = drawRackNature(stream({ seed: 'fingerprint', game: 0, frame: index, ball: 0, purpose: 'rack' }))
    const hit = {
      offsetMetres,
      angleRadians: 0.08,
      speedMetresPerSecond: 7.5,
      ballMassKilograms: 6.8,
      standing: FULL_RACK,
    }
    const { standing, touched, exitOffsetMetres, steps } = throwAtRack(hit, nature)
    digest.update(Float64Array.of(standing, touched, exitOffsetMetres, steps))
  })
  return digest.digest('hex').slice(0, 16)
}
