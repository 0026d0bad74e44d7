import { randomBytes } from 'node:crypto'
import { beginScenario } from '../scenarios/begin-scenario.js'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/load.js'
import { type Scenario, scenarioFrom } from '../scenarios/scenario.js'
import { locateNowhere } from '../scenarios/source-text.js'
import { dynamicsOf } from '../sim/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../sim/ball/motion.js'
import { buildStepTable } from '../sim/ball/step-table.js'
import { advance, checkDecision } from '../sim/block/advance.js'
import type { BlockState, Decision } from '../sim/block/types.js'
import { playerView } from '../sim/block/view.js'
import { LEVELS } from '../sim/bowler/levels.js'
import type { Hand } from '../sim/bowler/profile.js'
import { intendedLaunch } from '../sim/bowler/release.js'
import { gradeKnown } from '../sim/decision/grade.js'
import { FILM_ROWS, mirrorFilm } from '../sim/lane/film.js'
import { metresToBoard, radiansToDegrees } from '../sim/units.js'
import { fileKeeper } from './keeping.js'
import type { MeantRoll, TrainerServices } from './services.js'

/** The services of the trainer proper: the simulator, the library, and files in the player's data folder. */
export function realServices(
  environment: Readonly<Record<string, string | undefined>>,
  seed?: string,
): TrainerServices {
  const keeper = fileKeeper(environment)
  return {
    scenarioNames: builtInNames,
    loadScenario,
    levels: () => LEVELS,
    withBowler,
    freshSeed: () => seed ?? randomBytes(5).toString('hex'),
    begin: beginScenario,
    view: playerView,
    check: checkDecision,
    advance,
    grade: (block, decision) => (block.spot?.phase === 'game' ? gradeKnown(block, decision) : null),
    meantRoll,
    keptBlock: keeper.find,
    keep: keeper.keep,
  }
}

function withBowler(scenario: Scenario, level: string, hand: Hand): Scenario {
  const bowler = level === 'own' ? { ...scenario.data.bowler, hand } : { level, hand }
  return scenarioFrom(scenario.name, locateNowhere(scenario.name, { ...scenario.data, bowler }))
}

function meantRoll(block: BlockState, decision: Decision): MeantRoll {
  const { bowler, bag } = block.setup
  const lane = block.lanes[block.spot?.lane ?? 0]!
  const ball = bag.find((one) => one.id === decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const film = bowler.hand === 'left' ? mirrorFilm(lane.film) : lane.film
  const outcome = newRollOutcome()
  const path = new Float64Array(FILM_ROWS)
  const launch = intendedLaunch(bowler, decision.aim, decision.release)
  rollBall(film, buildStepTable(film), dynamicsOf(ball), launch, outcome, path)
  return {
    boards: path.map(metresToBoard),
    entryBoard: metresToBoard(outcome.lateralAtPinsMetres),
    entryAngleDegrees: radiansToDegrees(Math.atan(outcome.tangentAtPins)),
  }
}
