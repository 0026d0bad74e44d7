import { randomBytes } from 'node:crypto'
import { availableParallelism } from 'node:os'
import { beginScenario } from '../../scenarios/files/scenario/begin-scenario.js'
import { builtInNames } from '../../scenarios/library/library.js'
import { loadScenario } from '../../scenarios/library/load.js'
import { practiceKeeper } from '../../scenarios/practice/practice-keeper.js'
import { dataFolder, withDataFolder } from '../../scenarios/store/data-folder.js'
import { fileKeeper, type Said } from '../../scenarios/store/keeping.js'
import { refuseSealedLane } from '../../scenarios/store/sealed-lanes.js'
import { laneOfToday } from '../../scenarios/store/today.js'
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
  { seed, secondThinker = thinker, ...said }: Said & { readonly seed?: string; readonly secondThinker?: Thinker } = {},
): TrainerServices {
  const settingsIn = withDataFolder(environment, said.dataFolder)
  return {
    ...fileKeeper(environment, said),
    scenarioNames: builtInNames,
    loadScenario,
    readProgress: async () => {
      const { ownProgress } = await import('../../scenarios/reports/progress/own-progress.js')
      return ownProgress(dataFolder(said.dataFolder, environment), said.player)
    },
    openDrill: async ({ name, answered }) => {
      const { shortLibraryDrill } = await import('../../scenarios/practice/library-drill.js')
      return shortLibraryDrill(name, answered)
    },
    levels: () => LEVELS,
    fit: fitScenario,
    practice: practiceKeeper(environment, said),
    freshSeed: (own) => seed ?? own ?? unseenSeed(),
    otherSeed: unseenSeed,
    laneOfToday,
    playerName: said.player,
    begin: beginScenario,
    checkOpen: (scenario) => refuseSealedLane(dataFolder(said.dataFolder, environment), scenario),
    view: playerView,
    check: checkDecision,
    advance,
    pinFall,
    now: () => performance.now(),
    thinker,
    secondThinker,
    hasSpareCore: availableParallelism() > 1,
    meantBoards: (block, decision) => meantPath(block, decision).path.map(metresToBoard),
    readSettings: () => readSettings(settingsIn),
    keepSettings: (settings) => writeSettings(settingsIn, settings),
  }
}

/** Short enough to read out. */
const unseenSeed = (): string => randomBytes(5).toString('hex')
