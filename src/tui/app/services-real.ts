import { randomBytes } from 'node:crypto'
import { beginScenario } from '../../scenarios/files/scenario/begin-scenario.js'
import { builtInNames } from '../../scenarios/library/library.js'
import { loadScenario } from '../../scenarios/library/load.js'
import { dataFolder } from '../../scenarios/store/data-folder.js'
import { fileKeeper, type Said } from '../../scenarios/store/keeping.js'
import { refuseSealedLane } from '../../scenarios/store/sealed-lanes.js'
import { meantPath } from '../../sim/analysis/debrief/reading/meant-path.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import { metresToBoard } from '../../sim/units.js'
import { advance, checkDecision } from '../../sim/world/block/advance.js'
import { pinFall } from '../../sim/world/block/pin-fall.js'
import { LEVELS } from '../../sim/world/bowler/levels.js'
import { readSettings, writeSettings } from '../settings/settings-file.js'
import type { TrainerServices } from '../state/services.js'
import type { Thinker } from '../worker/thinker.js'
import { fitScenario } from './fit.js'

/** The services of the trainer proper: the simulator, the library, and files in the player's folders. */
export function realServices(
  environment: Readonly<Record<string, string | undefined>>,
  thinker: Thinker,
  { seed, ...said }: Said & { readonly seed?: string } = {},
): TrainerServices {
  return {
    ...fileKeeper(environment, said),
    scenarioNames: builtInNames,
    loadScenario,
    levels: () => LEVELS,
    fit: fitScenario,
    freshSeed: () => seed ?? randomBytes(5).toString('hex'),
    begin: (scenario, blockSeed) => {
      refuseSealedLane(dataFolder(said.dataFolder, environment), scenario)
      return beginScenario(scenario, blockSeed)
    },
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
