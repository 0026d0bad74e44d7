import type { Scenario } from '../../scenarios/scenario.js'
import { ScenarioError } from '../../scenarios/scenario-error.js'
import { type Command, commandFor } from '../keys.js'
import type { KeptBlock, TrainerServices } from '../services.js'
import { type Action, type AppState, homeEntries, keyContext, type Screen } from './app-state.js'
import { debriefOf, reduceDebrief, runOn } from './debrief-state.js'
import { blockOf, type PlayState, playFrom, type ThrowGrade } from './play-state.js'
import { chooseBall, reducePlay } from './reduce-play.js'

/** Pictures in the run of one ball down the lane. */
export const ROLL_FRAMES = 16

/** The one place where the trainer's state changes. Pure but for the seed of a new block, which services give. */
export function reducer(services: TrainerServices): (state: AppState, action: Action) => AppState {
  return (state, action) => reduce(state, action, services)
}

function reduce(state: AppState, action: Action, services: TrainerServices): AppState {
  const { screen } = state
  switch (action.type) {
    case 'key': {
      // What a key means depends on where the trainer is by now, which may be further on than what is drawn.
      const meant = commandFor(action.bagDrawn ? 'bag' : keyContext(state), action.name)
      return meant === null ? state : command({ ...state, notice: '' }, meant, services)
    }
    case 'command':
      return command({ ...state, notice: '' }, action.command, services)
    case 'ball-chosen':
      return screen.kind === 'play' ? withPlay(state, chooseBall(screen.play, action.place, services)) : state
    case 'weighed':
      if (screen.kind !== 'play' || screen.play.stage.kind !== 'weighing') return state
      return withPlay(state, {
        ...screen.play,
        stage: { kind: 'rolling', next: action.next, grade: action.grade, frame: 0 },
      })
    case 'tick':
      return screen.kind === 'play' ? tick(state, screen.play, services) : state
    case 'graded':
      if (screen.kind !== 'debrief') return state
      return {
        ...state,
        screen: {
          ...screen,
          play: { ...screen.play, grades: screen.play.grades.with(action.throwIndex, action.grade) },
        },
      }
    case 'ran-on':
      if (screen.kind !== 'debrief' || !screen.debrief.running) return state
      return { ...state, screen: { ...screen, debrief: runOn(screen.debrief, screen.play.grades.length) } }
    case 'trouble':
      return { ...state, notice: action.sentence }
  }
}

const withScreen = (state: AppState, screen: Screen): AppState => ({ ...state, screen })
const withPlay = (state: AppState, play: PlayState): AppState => withScreen(state, { kind: 'play', play })

function command(state: AppState, command: Command, services: TrainerServices): AppState {
  if (command === 'help') return { ...state, help: !state.help }
  if (state.help) return command === 'back' ? { ...state, help: false } : state
  if (command === 'quit') return { ...state, exitCode: 0 }
  const { screen } = state
  switch (screen.kind) {
    case 'home':
      return home(state, screen.cursor, command, services)
    case 'scenarios': {
      if (command === 'back') return withScreen(state, { kind: 'home', cursor: 0 })
      const scenario = state.scenarios[screen.cursor]
      if (command === 'enter' && scenario) {
        const { hand } = scenario.setup.bowler
        return withScreen(state, { kind: 'bowler', scenario, cursor: 0, hand })
      }
      return withScreen(state, { ...screen, cursor: moved(screen.cursor, command, state.scenarios.length) })
    }
    case 'bowler':
      return bowler(state, screen, command, services)
    case 'play':
      return play(state, screen.play, command, services)
    case 'debrief':
      if (command === 'back') return withScreen(state, { kind: 'home', cursor: 0 })
      return withScreen(state, { ...screen, debrief: reduceDebrief(screen.debrief, command, screen.play) })
  }
}

function moved(cursor: number, command: Command, count: number): number {
  const by = command === 'up' ? -1 : command === 'down' ? 1 : 0
  return count === 0 ? 0 : (cursor + by + count) % count
}

function home(state: AppState, cursor: number, command: Command, services: TrainerServices): AppState {
  const entries = homeEntries(state)
  if (command !== 'enter') return withScreen(state, { kind: 'home', cursor: moved(cursor, command, entries.length) })
  switch (entries[cursor]) {
    case 'continue':
      return takeUp(state, services)
    case 'debrief':
      return withScreen(state, { kind: 'debrief', play: state.finished!, debrief: debriefOf(state.finished!) })
    case 'keys':
      return { ...state, help: true }
    case 'quit':
      return { ...state, exitCode: 0 }
    default:
      return withScreen(state, { kind: 'scenarios', cursor: 0 })
  }
}

function takeUp(state: AppState, services: TrainerServices): AppState {
  try {
    const { scenario, states } = state.kept!.takeUp()
    const grades = new Array<ThrowGrade>(states.length - 1).fill(undefined)
    const suggestion = services.view(states.at(-1)!)?.suggestion
    return withPlay({ ...state, kept: null }, playFrom(scenario, states, grades, suggestion))
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    return { ...state, kept: null, notice: `That block cannot be taken up again: ${fault.sentences[0]}` }
  }
}

function bowler(
  state: AppState,
  screen: Screen & { kind: 'bowler' },
  command: Command,
  services: TrainerServices,
): AppState {
  const levels = services.levels()
  if (command === 'back') {
    return withScreen(state, { kind: 'scenarios', cursor: Math.max(0, state.scenarios.indexOf(screen.scenario)) })
  }
  if (command === 'left' || command === 'right') {
    return withScreen(state, { ...screen, hand: screen.hand === 'right' ? 'left' : 'right' })
  }
  if (command !== 'enter')
    return withScreen(state, { ...screen, cursor: moved(screen.cursor, command, levels.length + 1) })
  return startBlock(state, chosenScenario(screen, services), services.freshSeed(), services)
}

/** The scenario with the bowler the cursor is on; the first entry is the scenario's own bowler. */
export function chosenScenario(
  screen: Screen & { kind: 'bowler' },
  services: Pick<TrainerServices, 'levels' | 'withBowler'>,
): Scenario {
  const level = services.levels()[screen.cursor - 1]
  if (level !== undefined) return services.withBowler(screen.scenario, level, screen.hand)
  const own = screen.scenario.setup.bowler
  return screen.hand === own.hand ? screen.scenario : services.withBowler(screen.scenario, own.level, screen.hand)
}

export function startBlock(state: AppState, scenario: Scenario, seed: string, services: TrainerServices): AppState {
  try {
    const block = services.begin(scenario, seed)
    return withPlay(state, playFrom(scenario, [block], [], services.view(block)?.suggestion))
  } catch (fault) {
    if (fault instanceof ScenarioError) return { ...state, notice: fault.sentences[0] ?? fault.message }
    throw fault
  }
}

function play(state: AppState, play: PlayState, command: Command, services: TrainerServices): AppState {
  const { stage } = play
  if (stage.kind === 'rolling') return command === 'skip' ? withPlay(state, landed(play, stage, services)) : state
  if (stage.kind === 'done' || (stage.kind === 'leaving' && command === 'enter')) {
    if (command === 'enter' && play.grades.length > 0) {
      return { ...state, finished: play, screen: { kind: 'debrief', play, debrief: debriefOf(play) } }
    }
    if (command === 'enter' || command === 'back') return withScreen(state, { kind: 'home', cursor: 0 })
    return state
  }
  if (command === 'back' && stage.kind === 'deciding' && !play.bagOpen) {
    const kept = play.grades.length > 0 ? keptFrom(play) : state.kept
    return { ...state, kept, screen: { kind: 'home', cursor: 0 } }
  }
  return withPlay(state, reducePlay(play, command, services))
}

function tick(state: AppState, play: PlayState, services: TrainerServices): AppState {
  const { stage } = play
  if (stage.kind !== 'rolling') return state
  const frame = stage.frame + 1
  return withPlay(state, frame >= ROLL_FRAMES ? landed(play, stage, services) : { ...play, stage: { ...stage, frame } })
}

function landed(
  play: PlayState,
  stage: PlayState['stage'] & { kind: 'rolling' },
  services: TrainerServices,
): PlayState {
  const suggestion = services.view(stage.next)?.suggestion
  return playFrom(
    play.scenario,
    [...play.states, stage.next],
    [...play.grades, stage.grade],
    suggestion ?? blockOf(play).throws.at(-1)?.decision,
  )
}

const keptFrom = (play: PlayState): KeptBlock => ({
  title: play.scenario.title,
  throws: play.grades.length,
  takeUp: () => ({ scenario: play.scenario, states: play.states }),
})
