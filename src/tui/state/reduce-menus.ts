import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import { MODES } from '../../scenarios/store/block-notes.js'
import type { PastBlock } from '../../scenarios/store/past-blocks.js'
import { STYLES } from '../../sim/world/bowler/levels.js'
import type { Command } from '../keys/binding.js'
import { SETTING_ROWS, stepSetting } from '../settings/settings.js'
import type { AppState, BowlerChoice, Filter, Screen, ScreenOf } from './app-state.js'
import { bowlerEntries, chosenScenario } from './bowler-choice.js'
import { debriefOf } from './debrief-state.js'
import { goHome, homeEntries } from './home-entries.js'
import { filtered, moved, reduceFilter, scrolled } from './lists.js'
import { reduceNaming } from './naming.js'
import type { PlayState } from './play-state.js'
import { openPractice } from './practice-state.js'
import { startMatch } from './rival.js'
import type { TrainerServices } from './services.js'
import { startBlock } from './start.js'

type MenuScreen = Exclude<Screen, { kind: 'play' | 'practice' | 'debrief' | 'kit' | 'ball' | 'own-bowler' }>

/** The answer of every screen that is a list to choose from. */
export function menu(state: AppState, screen: MenuScreen, command: Command, services: TrainerServices): AppState {
  if (screen.kind === 'scenarios' || (screen.kind === 'past' && screen.opening === null)) {
    const narrowed = reduceFilter(screen, command)
    if (narrowed) return { ...state, screen: narrowed }
  }
  if (command === 'back' && screen.kind !== 'bowler') return goHome(state)
  switch (screen.kind) {
    case 'home':
      return screen.takingUp || screen.opening ? state : home(state, screen.cursor, command, services)
    case 'scenarios': {
      const listed = listedScenarios(state, screen.filter)
      const scenario = listed[screen.cursor]
      if (command === 'enter' && scenario)
        return { ...state, screen: { kind: 'bowler', ...firstChoice(state, scenario) } }
      return { ...state, screen: { ...screen, cursor: moved(screen.cursor, command, listed.length) } }
    }
    case 'bowler':
      return bowler(state, screen, command, services)
    case 'past':
      return past(state, screen, command)
    case 'progress':
      return { ...state, screen: { ...screen, scroll: scrolled(screen.scroll, command) } }
    case 'drill-over':
      return command === 'enter' ? goHome(state) : state
    case 'settings': {
      const by = command === 'left' ? -1 : command === 'right' ? 1 : 0
      if (by !== 0) return { ...state, settings: stepSetting(state.settings, screen.cursor, by) }
      return { ...state, screen: { ...screen, cursor: moved(screen.cursor, command, SETTING_ROWS.length) } }
    }
  }
}

/** The scenarios a filter lets through, by what the list says of them. */
export const listedScenarios = ({ scenarios }: Pick<AppState, 'scenarios'>, filter: Filter | undefined) =>
  filtered(scenarios, filter, ({ name, title, purpose }) => `${name} ${title} ${purpose}`)

/** The same of past blocks. */
export const listedBlocks = (blocks: readonly PastBlock[] | null, filter: Filter | undefined) =>
  filtered(blocks ?? [], filter, ({ title, bowledAt }) => `${title} ${bowledAt.toISOString().slice(0, 10)}`)

function home(state: AppState, cursor: number, command: Command, services: TrainerServices): AppState {
  const entries = homeEntries(state)
  if (command !== 'enter') {
    return { ...state, screen: { kind: 'home', cursor: moved(cursor, command, entries.length) } }
  }
  switch (entries[cursor]) {
    case 'continue':
      return { ...state, screen: { kind: 'home', cursor, takingUp: state.kept[0]! } }
    case 'practice':
      return { ...state, screen: { kind: 'practice', practice: openPractice() } }
    case 'drill':
      return { ...state, screen: { kind: 'home', cursor, opening: state.waitingDrill! } }
    case 'today':
      return chooseToday(state, services)
    case 'debrief':
      return lookAgain(state, state.finished!)
    case 'past':
      return { ...state, screen: { kind: 'past', cursor: 0, blocks: null, opening: null } }
    case 'progress':
      return { ...state, screen: { kind: 'progress', report: null, scroll: 0 } }
    case 'kit':
      return { ...state, screen: { kind: 'kit', cursor: 0 } }
    case 'settings':
      return { ...state, screen: { kind: 'settings', cursor: 0 } }
    case 'keys':
      return { ...state, help: { page: 'keys', scroll: 0 } }
    case 'quit':
      return { ...state, exitCode: 0 }
    default:
      return { ...state, screen: { kind: 'scenarios', cursor: 0 } }
  }
}

/** Who bowls the lane of the day: the scenario's own bowler and bag to begin with, which are the same for everyone. */
function chooseToday(state: AppState, services: TrainerServices): AppState {
  const { scenarioName, seed, date } = services.laneOfToday()
  const scenario = state.scenarios.find(({ name }) => name === scenarioName)
  if (!scenario) return { ...state, notice: 'The lanes are still being read; try again in a moment.' }
  const asWritten = { hand: scenario.setup.bowler.hand, bag: 'scenario' as const, seed, day: date }
  return { ...state, screen: { kind: 'bowler', ...firstChoice(state, scenario), ...asWritten } }
}

const lookAgain = (state: AppState, play: PlayState): AppState => ({
  ...state,
  screen: { kind: 'debrief', play, debrief: debriefOf(play) },
})

function firstChoice({ settings, kit }: AppState, scenario: Scenario): BowlerChoice {
  const own = scenario.setup.bowler.hand
  return {
    scenario,
    cursor: 0,
    hand: settings.hand === 'scenario' ? own : settings.hand,
    style: 'tweener',
    bag: kit.bag.length > 0 ? 'own' : 'scenario',
    mode: settings.mode,
    seed: '',
    guest: null,
    naming: null,
    day: null,
  }
}

function bowler(state: AppState, screen: ScreenOf<'bowler'>, command: Command, services: TrainerServices): AppState {
  const choosing = (change: Partial<BowlerChoice>): AppState => ({ ...state, screen: { ...screen, ...change } })
  if (screen.naming) return choosing(reduceNaming(screen, command))
  switch (command) {
    case 'seed':
      return choosing({ naming: { what: 'seed', text: screen.seed } })
    case 'against':
      return choosing(screen.guest === null ? { naming: { what: 'guest', text: '' } } : { guest: null })
    case 'back':
      if (screen.day !== null) return goHome(state)
      return { ...state, screen: { kind: 'scenarios', cursor: Math.max(0, state.scenarios.indexOf(screen.scenario)) } }
    case 'left':
    case 'right':
      return choosing({ hand: screen.hand === 'right' ? 'left' : 'right' })
    case 'style':
      return choosing({ style: after(STYLES, screen.style) })
    case 'mode':
      return choosing({ mode: after(MODES, screen.mode) })
    case 'bag':
      if (state.kit.bag.length === 0) {
        return { ...state, notice: 'You have no bag of your own yet; put one together at home under Bag and bowler.' }
      }
      return choosing({ bag: screen.bag === 'own' ? 'scenario' : 'own' })
    case 'enter': {
      const chosen = chosenScenario(state, screen, services)
      if ('problem' in chosen) return { ...state, notice: chosen.problem }
      const seed = screen.seed || services.freshSeed(chosen.scenario.data.seed)
      const { scenario } = chosen
      if (screen.guest === null) return startBlock(state, scenario, seed, services, screen.mode)
      const names = [services.playerName ?? 'You', screen.guest] as const
      return startMatch(state, { scenario, seed, mode: screen.mode }, names, services)
    }
    default:
      return choosing({ cursor: moved(screen.cursor, command, bowlerEntries(state.kit, services).length) })
  }
}

const after = <Value>(values: readonly Value[], value: Value): Value =>
  values[(values.indexOf(value) + 1) % values.length]!

function past(state: AppState, screen: ScreenOf<'past'>, command: Command): AppState {
  const blocks = listedBlocks(screen.blocks, screen.filter)
  if (screen.opening !== null) return state
  const path = blocks[screen.cursor]?.path ?? null
  if (command === 'against')
    return path === null ? state : { ...state, screen: { ...screen, opening: path, isRival: true } }
  if (command === 'enter') {
    const { finished } = state
    // The block just looked back on need not be played again.
    if (finished && finished.recordPath === path) return lookAgain(state, finished)
    return { ...state, screen: { ...screen, opening: path, isRival: false } }
  }
  return { ...state, screen: { ...screen, cursor: moved(screen.cursor, command, blocks.length) } }
}
