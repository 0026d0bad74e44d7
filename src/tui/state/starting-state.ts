import { ScenarioError } from '../../scenarios/scenario-error.js'
import type { TrainerServices } from '../services.js'
import type { AppState } from './app-state.js'
import { startBlock } from './reduce.js'

/**
 * The state the trainer opens in: the home screen, or the first decision of the scenario asked for.
 *
 * @throws ScenarioError
 */
export async function startingState(scenarioName: string | undefined, services: TrainerServices): Promise<AppState> {
  const scenarios = await Promise.all(services.scenarioNames().map((name) => services.loadScenario(name)))
  const home: AppState = {
    screen: { kind: 'home', cursor: 0 },
    scenarios,
    kept: await services.keptBlock(),
    finished: null,
    help: false,
    notice: '',
    exitCode: null,
  }
  if (scenarioName === undefined) return home
  const started = startBlock(home, await services.loadScenario(scenarioName), services.freshSeed(), services)
  if (started.notice !== '') throw new ScenarioError([started.notice])
  return started
}
