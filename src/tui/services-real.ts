import { randomBytes } from 'node:crypto'
import { beginScenario } from '../scenarios/begin-scenario.js'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/load.js'
import { meantPath } from '../sim/account/meant-path.js'
import { advance, checkDecision } from '../sim/block/advance.js'
import { pinFall } from '../sim/block/pin-fall.js'
import { LEVELS } from '../sim/bowler/levels.js'
import { playerView } from '../sim/decision/player-view.js'
import { metresToBoard } from '../sim/units.js'
import { fileKeeper } from './keeping.js'
import { fitScenario } from './kit/fit.js'
import type { TrainerServices } from './services.js'
import { readSettings, writeSettings } from './settings/settings-file.js'
import type { Thinker } from './thinking/thinker.js'

/** The services of the trainer proper: the simulator, the library, and files in the player's folders. */
export function realServices(
  environment: Readonly<Record<string, string | undefined>>,
  thinker: Thinker,
  seed?: string,
): TrainerServices {
  return {
    ...fileKeeper(environment),
    scenarioNames: builtInNames,
    loadScenario,
    levels: () => LEVELS,
    fit: fitScenario,
    freshSeed: () => seed ?? randomBytes(5).toString('hex'),
    begin: beginScenario,
    view: playerView,
    check: checkDecision,
    advance,
    pinFall,
    now: () => performance.now(),
    thinker,
    meantBoards: (block, decision) => meantPath(block, decision).path.map(metresToBoard),
    readSettings: () => readSettings(environment),
    keepSettings: (settings) => writeSettings(environment, settings),
  }
}
