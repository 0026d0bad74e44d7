import type { Command } from '../keys/binding.js'
import { commandFor } from '../keys.js'
import type { KeptBlock, TrainerServices } from '../services.js'
import { type Action, type AppState, keyContext, type Screen } from './app-state.js'
import { debriefOf, rollOn, runOn } from './debrief-state.js'
import { blockOf, type PlayState, playedOn, playFrom } from './play-state.js'
import { reduceKit } from './reduce-kit.js'
import { accounted, accountWhole, lookBack, triedOut } from './reduce-look-back.js'
import { menu } from './reduce-menus.js'
import { chooseBall, reducePlay } from './reduce-play.js'
import { startTour } from './start.js'
import { isTourOver, tourOn } from './tour.js'

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
    case 'waited':
      if (screen.kind !== 'play' || screen.play.stage.kind !== 'weighing') return state
      return withPlay(state, { ...screen.play, stage: { kind: 'weighing', turns: screen.play.stage.turns + 1 } })
    case 'tick':
      return screen.kind === 'play' ? tick(state, screen.play, services) : state
    case 'graded':
      return changePlay(state, (play) => {
        const throwIndex = play.states.indexOf(action.before)
        const isOpen = throwIndex >= 0 && throwIndex < play.grades.length
        return isOpen ? { ...play, grades: play.grades.with(throwIndex, action.grade) } : play
      })
    case 'believed':
      return changePlay(state, (play) =>
        play.states.at(-2) === action.before ? { ...play, belief: action.belief } : play,
      )
    case 'accounted':
      return accounted(state, action.block, action.step)
    case 'account-whole':
      return accountWhole(state, action.block, action.account)
    case 'what-if':
      return triedOut(state, action.result)
    case 'ran-on':
      if (screen.kind !== 'debrief' || !screen.debrief.running) return state
      return { ...state, screen: { ...screen, debrief: runOn(screen.debrief, screen.play.grades.length) } }
    case 'rolled-on':
      return screen.kind === 'debrief' ? { ...state, screen: { ...screen, debrief: rollOn(screen.debrief) } } : state
    case 'filed': {
      const filed = (play: PlayState) => (blockOf(play) === action.block ? { ...play, recordPath: action.path } : play)
      return { ...changePlay(state, filed), hasPast: true, finished: state.finished && filed(state.finished) }
    }
    case 'scenarios-read':
      return { ...state, scenarios: action.scenarios }
    case 'past-read':
      return screen.kind === 'past' ? { ...state, screen: { ...screen, blocks: action.blocks } } : state
    case 'past-opened': {
      if (screen.kind !== 'past' || screen.opening !== action.path) return state
      const play = playedOn(action.played)
      return { ...state, finished: play, screen: { kind: 'debrief', play, debrief: debriefOf(play) } }
    }
    case 'past-refused':
      return screen.kind === 'past'
        ? { ...state, notice: action.sentence, screen: { ...screen, opening: null } }
        : state
    case 'trouble':
      return { ...state, notice: action.sentence }
  }
}

const withScreen = (state: AppState, screen: Screen): AppState => ({ ...state, screen })
const withPlay = (state: AppState, play: PlayState): AppState => withScreen(state, { kind: 'play', play: tourOn(play) })

function changePlay(state: AppState, change: (play: PlayState) => PlayState): AppState {
  const { screen } = state
  if (screen.kind !== 'play' && screen.kind !== 'debrief') return state
  return { ...state, screen: { ...screen, play: change(screen.play) } }
}

function command(state: AppState, command: Command, services: TrainerServices): AppState {
  if (command === 'tour') return startTour(leaveBlock({ ...state, help: false }), services)
  if (command === 'help') return { ...state, help: !state.help }
  if (state.help) return command === 'back' ? { ...state, help: false } : state
  if (command === 'quit') return { ...leaveBlock(state), exitCode: 0 }
  const { screen } = state
  switch (screen.kind) {
    case 'play':
      return play(state, screen.play, command, services)
    case 'debrief':
      return lookBack(state, screen, command, services)
    case 'kit':
    case 'ball':
    case 'own-bowler':
      return reduceKit(state, screen, command)
    default:
      return menu(state, screen, command, services)
  }
}

function play(state: AppState, play: PlayState, command: Command, services: TrainerServices): AppState {
  const { stage } = play
  if (stage.kind === 'rolling') return command === 'skip' ? withPlay(state, landed(play, stage, services)) : state
  if (stage.kind === 'weighing') {
    return command === 'back' ? withPlay(state, { ...play, stage: { kind: 'deciding' } }) : state
  }
  if (stage.kind === 'done' || (stage.kind === 'leaving' && command === 'enter')) {
    if (command === 'enter' && play.grades.length > 0) {
      return { ...state, finished: play, screen: { kind: 'debrief', play, debrief: debriefOf(play) } }
    }
    if (command === 'enter' || command === 'back') return goHome(leaveBlock(state))
    return state
  }
  if (command === 'back' && stage.kind === 'deciding' && play.open === 'nothing') return goHome(leaveBlock(state))
  return withPlay(state, reducePlay(play, command, services))
}

/** What leaving the play screen keeps: the block to go on with, unless it is the tour or over. */
function leaveBlock(state: AppState): AppState {
  const { screen } = state
  if (screen.kind !== 'play') return state
  const { play } = screen
  if (play.tour !== null) return { ...state, settings: { ...state.settings, tour: 'seen' } }
  const isUnfinished = play.grades.length > 0 && blockOf(play).spot !== null
  return isUnfinished ? { ...state, kept: keptFrom(play) } : state
}

const goHome = (state: AppState): AppState => withScreen(state, { kind: 'home', cursor: 0 })

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
  const calls = [...play.grades.map((_, index) => play.calls[index] ?? null), play.call]
  const next = playFrom(
    play.scenario,
    [...play.states, stage.next],
    [...play.grades, stage.grade],
    suggestion ?? blockOf(play).throws.at(-1)?.decision,
    { mode: play.mode, calls, ownFindings: play.ownFindings },
  )
  const toured = { ...next, tour: play.tour }
  return isTourOver(toured) ? { ...toured, stage: { kind: 'done' } } : toured
}

const keptFrom = (play: PlayState): KeptBlock => ({
  title: play.scenario.title,
  throws: play.grades.length,
  takeUp: () => ({
    scenario: play.scenario,
    states: play.states,
    notes: { mode: play.mode, calls: play.calls, ownFindings: play.ownFindings },
    recordPath: play.recordPath,
  }),
})
