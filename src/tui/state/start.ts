import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import type { ShortBlockLane } from '../../scenarios/practice/short-block-lane.js'
import { type Mode, noNotes } from '../../scenarios/store/block-notes.js'
import type { PlayedBlock } from '../../scenarios/store/keeper.js'
import type { AppState } from './app-state.js'
import { playedOn, playFrom } from './play-state.js'
import type { TrainerServices } from './services.js'
import { TOUR_SCENARIO, TOUR_SEED } from './tour.js'

/** A new block on the play screen, or a notice why there is none. */
export function startBlock(
  state: AppState,
  scenario: Scenario,
  seed: string,
  services: TrainerServices,
  mode: Mode = state.settings.mode,
): AppState {
  try {
    services.checkOpen?.(scenario)
    const block = services.begin(scenario, seed)
    const play = playFrom(scenario, [block], [], services.view(block)?.suggestion, noNotes(mode))
    return { ...state, screen: { kind: 'play', play } }
  } catch (fault) {
    if (fault instanceof ScenarioError) return { ...state, notice: fault.sentences[0] ?? fault.message }
    throw fault
  }
}

/** The short block that practice ends with, on the play screen. */
export function startShortBlock(
  state: AppState,
  { scenario, seed }: ShortBlockLane,
  services: TrainerServices,
): AppState {
  const started = startBlock(state, scenario, seed, services, 'test')
  if (started.screen.kind !== 'play') return started
  return { ...started, screen: { kind: 'play', play: { ...started.screen.play, isShort: true } } }
}

/** A block that was left, on the play screen as it stood. */
export function goOnWith(state: AppState, played: PlayedBlock, services: TrainerServices): AppState {
  const play = playedOn(played, services.view(played.states.at(-1)!)?.suggestion)
  return { ...state, screen: { kind: 'play', play } }
}

/** The guided first frame: a drill on house oil without practice, never kept. */
export function startTour(state: AppState, services: TrainerServices): AppState {
  const scenario = state.scenarios.find(({ name }) => name === TOUR_SCENARIO)
  if (!scenario) return { ...state, notice: `The tour needs the built-in lanes ${TOUR_SCENARIO}, which are missing.` }
  const straightAway = { ...scenario, setup: { ...scenario.setup, practiceThrows: 0 } }
  const started = startBlock(state, straightAway, TOUR_SEED, services, 'drill')
  if (started.screen.kind !== 'play') return started
  return { ...started, screen: { ...started.screen, play: { ...started.screen.play, tour: 0 } } }
}
