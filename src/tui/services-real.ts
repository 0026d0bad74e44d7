import { randomBytes } from 'node:crypto'
import { beginScenario } from '../scenarios/begin-scenario.js'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/load.js'
import { dynamicsOf } from '../sim/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../sim/ball/motion.js'
import { buildStepTable } from '../sim/ball/step-table.js'
import { advance, checkDecision } from '../sim/block/advance.js'
import type { BlockState, Decision } from '../sim/block/types.js'
import { playerView } from '../sim/block/view.js'
import { LEVELS } from '../sim/bowler/levels.js'
import { intendedLaunch } from '../sim/bowler/release.js'
import { FILM_ROWS, mirrorFilm } from '../sim/lane/film.js'
import { metresToBoard, radiansToDegrees } from '../sim/units.js'
import { fileKeeper } from './keeping.js'
import { fitScenario } from './kit/fit.js'
import type { MeantRoll, TrainerServices } from './services.js'
import { readSettings, writeSettings } from './settings/settings-file.js'
import type { Thinker } from './thinking/thinker.js'

/** The services of the trainer proper: the simulator, the library, and files in the player's folders. */
export function realServices(
  environment: Readonly<Record<string, string | undefined>>,
  thinker: Thinker,
  seed?: string,
): TrainerServices {
  const keeper = fileKeeper(environment)
  return {
    scenarioNames: builtInNames,
    loadScenario,
    levels: () => LEVELS,
    fit: fitScenario,
    freshSeed: () => seed ?? randomBytes(5).toString('hex'),
    begin: beginScenario,
    view: playerView,
    check: checkDecision,
    advance,
    thinker,
    meantRoll,
    keptBlock: keeper.find,
    keep: keeper.keep,
    keepNotes: keeper.keepNotes,
    hasPast: keeper.hasPast,
    listPast: keeper.listPast,
    openPast: keeper.openPast,
    findKit: keeper.findKit,
    keepKit: keeper.keepKit,
    readSettings: () => readSettings(environment),
    keepSettings: (settings) => writeSettings(environment, settings),
  }
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
