import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import type { PlayedBlock } from '../../scenarios/store/keeper.js'
import type { AppState } from './app-state.js'
import { startPosition } from './drill-play.js'
import { atHome } from './home-entries.js'
import { startAgainst } from './rival.js'
import type { TrainerServices } from './services.js'
import { goOnWith, startBlock, startTour } from './start.js'

/** The state the trainer opens in where a block is to be gone on with. @throws ScenarioError */
export async function resumedState(from: string | true, services: TrainerServices): Promise<AppState> {
  const home = await startingState(undefined, services, [])
  const played = await services.resume(from)
  const { blocks } = await services.leftBlocks()
  return goOnWith({ ...home, kept: blocks, notice: played.passedOver?.[0] ?? '' }, played, services)
}

/** The state the trainer opens in on an entry of a contest, or on a block whose lane a host has. */
export async function entryState(played: PlayedBlock, services: TrainerServices): Promise<AppState> {
  return goOnWith({ ...(await startingState(undefined, services, [])), notice: '' }, played, services)
}

/** The state the trainer opens in where a record is to be bowled against. @throws ScenarioError */
export async function stateAgainst(path: string, services: TrainerServices): Promise<AppState> {
  const home = await startingState(undefined, services, [])
  const started = startAgainst({ ...home, notice: '' }, await services.openPast(path), services)
  if (started.notice !== '') throw new ScenarioError([started.notice])
  return started
}

/** The state the trainer opens in where a drill is to be played. @throws ScenarioError */
export async function drillState(path: string, services: TrainerServices): Promise<AppState> {
  // Loaded only here: nobody who plays no drill waits for it.
  const { drillNamed } = await import('../../scenarios/practice/library-drill.js')
  const drill = await drillNamed(path)
  const home = await startingState(undefined, services, [])
  return startPosition(home, { drill, place: 0, answered: [] }, services)
}

/**
 * The state the trainer opens in: the home screen, the guided first frame where it has never been seen, or the first
 * decision of the scenario asked for.
 *
 * @param scenarioName the lanes to open on
 * @param listed built-in scenarios to read before the first picture; the others are read after it
 * @throws ScenarioError
 */
export async function startingState(
  scenarioName: string | undefined,
  services: TrainerServices,
  listed: readonly string[] = services.scenarioNames(),
): Promise<AppState> {
  const [scenarios, left, hasPast, found, { settings, problem }] = await Promise.all([
    Promise.all(listed.map((name) => services.loadScenario(name))),
    services.leftBlocks(),
    services.hasPast(),
    services.findKit(),
    services.readSettings(),
  ])
  const home: AppState = {
    screen: atHome({ kept: left.blocks, finished: null, hasPast, waitingDrill: null }),
    scenarios,
    kept: left.blocks,
    finished: null,
    hasPast,
    kit: found.kit,
    kitUndo: [],
    settings,
    help: null,
    enterAt: null,
    played: null,
    momentFrom: null,
    remembered: null,
    waitingDrill: null,
    today: null,
    compared: null,
    notice: found.problem || problem || (left.problems[0] ?? ''),
    exitCode: null,
  }
  if (scenarioName === undefined) {
    const isNew = settings.tour === 'offered' && left.blocks.length === 0 && !hasPast
    return isNew ? startTour(home, services) : home
  }
  const scenario = services.fit(await services.loadScenario(scenarioName), { seeing: settings.seeing })
  const started = startBlock({ ...home, notice: '' }, scenario, services.freshSeed(scenario.data.seed), services)
  if (started.notice !== '') throw new ScenarioError([started.notice])
  return started
}
