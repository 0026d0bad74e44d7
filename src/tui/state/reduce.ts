import type { KeptBlock, PlayedBlock } from '../../scenarios/store/keeper.js'
import type { BeliefSummary } from '../../sim/analysis/belief/summary.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Command } from '../keys/binding.js'
import { commandFor } from '../keys/keys.js'
import { again, isAgain } from './again.js'
import { type Action, type AppState, atHome, keyContext, type Screen } from './app-state.js'
import { averaged } from './averaged.js'
import { debriefOf, rollOn, runOn } from './debrief-state.js'
import { afterPosition } from './drill-play.js'
import { isAtStake, whyNotNow } from './fresh-press.js'
import { leaveBlock } from './leave-block.js'
import { backFromMoment } from './play-moment.js'
import { blockOf, type PlayState, playedOn } from './play-state.js'
import { playedOf } from './played.js'
import { isShortBlockNext, practised, reducePractice } from './practice-state.js'
import { clicked } from './reduce-click.js'
import { reduceHelp } from './reduce-help.js'
import { pasted, reduceKit } from './reduce-kit.js'
import { accounted, accountWhole, lookBack, triedOut } from './reduce-look-back.js'
import { menu } from './reduce-menus.js'
import { chooseBall, reducePlay } from './reduce-play.js'
import { keptNot, keptOn, letGo, skip, tick } from './reduce-throw.js'
import { changedBoth, handedOver, startAgainst } from './rival.js'
import type { TrainerServices } from './services.js'
import { goOnWith, startShortBlock, startTour } from './start.js'
import { tourOn } from './tour.js'

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
      if (action.name !== 'enter') return meant === null ? state : command({ ...state, notice: '' }, meant, services)
      return entered(state, meant, services)
    }
    case 'clicked': {
      const answer = clicked({ ...state, notice: '' }, action.hit, action.feet, services)
      return 'state' in answer ? answer.state : command({ ...state, notice: '' }, answer.command, services)
    }
    case 'command':
      return command({ ...state, notice: '' }, action.command, services)
    case 'pasted':
      return state.help ? state : pasted(state, action.text)
    case 'ball-chosen':
      return screen.kind === 'play' ? withPlay(state, chooseBall(screen.play, action.place, services)) : state
    case 'weighed':
      return playing(state, (play) => letGo(play, action.next, action.grade))
    case 'waited':
      if (screen.kind !== 'play' || screen.play.stage.kind !== 'weighing') return state
      return withPlay(state, { ...screen.play, stage: { kind: 'weighing', turns: screen.play.stage.turns + 1 } })
    case 'not-thrown':
      if (screen.kind !== 'play' || screen.play.stage.kind !== 'weighing') return state
      return { ...withPlay(state, { ...screen.play, stage: { kind: 'deciding' } }), notice: action.sentence }
    case 'tick':
      return playing(state, (play) => tick(play, services))
    case 'graded':
      return changePlay(state, (play) => {
        const throwIndex = play.states.indexOf(action.before)
        const isOpen = throwIndex >= 0 && throwIndex < play.grades.length
        return isOpen ? { ...play, grades: play.grades.with(throwIndex, action.grade) } : play
      })
    case 'believed':
      return changePlay(state, (play) => believed(play, action.before, action.belief))
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
    case 'kept':
      return playing(state, (play) => keptOn(play, action.next, services))
    case 'not-kept': {
      const { sentence } = action
      const back = playing(state, (play) => keptNot(play, action.next))
      return back === state ? state : { ...back, notice: `Not kept, so not thrown: ${sentence} Throw again.` }
    }
    case 'taken-up':
      return takenUp(state, action.kept, action.played, services)
    case 'take-up-refused':
      return {
        ...withoutKept(state, action.kept),
        notice: `That block cannot be resumed: ${action.sentence}`,
      }
    case 'filed': {
      const filed = (play: PlayState) => (blockOf(play) === action.block ? { ...play, recordPath: action.path } : play)
      return {
        ...changePlay(state, filed),
        hasPast: true,
        played: null,
        remembered: null,
        finished: state.finished && changedBoth(state.finished, filed),
      }
    }
    case 'scenarios-read':
      return { ...state, scenarios: action.scenarios }
    case 'progress-read':
      return screen.kind === 'progress' ? { ...state, screen: { ...screen, report: action.report } } : state
    case 'past-read':
      return {
        ...state,
        played: playedOf(action.blocks),
        ...(screen.kind === 'past' ? { screen: { ...screen, blocks: action.blocks } } : {}),
      }
    case 'remembered':
      return { ...state, remembered: action.remembered }
    case 'today-read':
      return { ...state, today: action.today }
    case 'comparing':
      return { ...state, compared: action.compared }
    case 'averaged':
      return averaged(state, action.averages)
    case 'past-opened': {
      if (screen.kind !== 'past' || screen.opening !== action.path) return state
      if (screen.isRival) return startAgainst(state, action.played, services)
      const play = playedOn(action.played)
      return { ...state, finished: play, screen: { kind: 'debrief', play, debrief: debriefOf(play) } }
    }
    case 'past-refused':
      return screen.kind === 'past'
        ? { ...state, notice: action.sentence, screen: { ...screen, opening: null } }
        : state
    case 'practice':
      return screen.kind === 'practice'
        ? withScreen(state, { kind: 'practice', practice: practised(screen.practice, action.event) })
        : state
    case 'trouble':
      return { ...state, notice: action.sentence }
  }
}

/** An Enter; where it would let go of a ball or end a block, one held down or pressed just after a result does nothing. */
function entered(state: AppState, meant: Command | null, services: TrainerServices): AppState {
  const now = services.now()
  const { screen } = state
  const isGuarded = screen.kind === 'play' && meant === 'enter' && !state.help && isAtStake(screen.play)
  const why = isGuarded ? whyNotNow(state, screen.play, now) : ''
  if (isGuarded && why !== '') return { ...withPlay(state, { ...screen.play, notice: why }), enterAt: now }
  return { ...(meant === null ? state : command({ ...state, notice: '' }, meant, services)), enterAt: now }
}

const withScreen = (state: AppState, screen: Screen): AppState => ({ ...state, screen })
const withPlay = (state: AppState, play: PlayState): AppState => withScreen(state, { kind: 'play', play: tourOn(play) })

function playing(state: AppState, change: (play: PlayState) => PlayState): AppState {
  if (state.screen.kind !== 'play') return state
  const play = change(state.screen.play)
  return play === state.screen.play ? state : withPlay(state, play)
}

function changePlay(state: AppState, change: (play: PlayState) => PlayState): AppState {
  const { screen } = state
  if (screen.kind !== 'play' && screen.kind !== 'debrief') return state
  return { ...state, screen: { ...screen, play: changedBoth(screen.play, change) } }
}

function command(state: AppState, command: Command, services: TrainerServices): AppState {
  if (command === 'tour') return startTour(leaveBlock({ ...state, help: null }, services), services)
  if (command === 'help') return { ...state, help: state.help ? null : { page: 'keys', scroll: 0 } }
  if (state.help) return { ...state, help: reduceHelp(state.help, command) }
  if (command === 'quit') return { ...leaveBlock(state, services), exitCode: 0 }
  const { screen } = state
  switch (screen.kind) {
    case 'play':
      return play(state, screen.play, command, services)
    case 'practice': {
      if (command === 'enter' && isShortBlockNext(screen.practice))
        return screen.practice.shortBlock ? startShortBlock(state, screen.practice.shortBlock, services) : state
      const practice = reducePractice(screen.practice, command)
      return practice ? withScreen(state, { kind: 'practice', practice }) : goHome(state)
    }
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
  if (stage.kind === 'rolling') {
    return command === 'skip' ? withPlay(state, skip(play, services)) : state
  }
  if (stage.kind === 'weighing') {
    const mayBack = command === 'back' && play.contest === undefined
    return mayBack ? withPlay(state, { ...play, stage: { kind: 'deciding' } }) : state
  }
  const isOver = stage.kind === 'done' || (stage.kind === 'leaving' && command === 'enter')
  const isLeft = command === 'back' && stage.kind === 'deciding' && play.open === 'nothing'
  if (play.moment && (isLeft || (isOver && (command === 'enter' || command === 'back'))))
    return backFromMoment(state) ?? state
  if (stage.kind === 'passing' && command === 'enter') return withPlay(state, handedOver(play))
  if (stage.kind === 'passing' || (stage.kind === 'done' && command === 'other-player' && play.contest === undefined)) {
    if (command === 'other-player') return withPlay(state, handedOver(play))
    return command === 'back' ? goHome(leaveBlock(state, services)) : state
  }
  if (stage.kind === 'done' && play.drill) {
    if (command === 'enter') return afterPosition(state, play, services)
    return command === 'back' ? goHome(state) : state
  }
  if (stage.kind === 'done' && play.contest !== undefined)
    return command === 'enter' || command === 'back' ? goHome(leaveBlock(state, services)) : state
  if (stage.kind === 'done' && isAgain(command)) return again(leaveBlock(state, services), play, command, services)
  if (isOver) {
    if (command === 'enter' && play.grades.length > 0) {
      return { ...state, finished: play, screen: { kind: 'debrief', play, debrief: debriefOf(play) } }
    }
    if (command === 'enter' || command === 'back') return goHome(leaveBlock(state, services))
    return state
  }
  if (isLeft) {
    return goHome(leaveBlock(state, services))
  }
  return withPlay(state, reducePlay(play, command, services))
}

const goHome = (state: AppState): AppState => withScreen(state, atHome(state))

function takenUp(state: AppState, kept: KeptBlock, played: PlayedBlock, services: TrainerServices): AppState {
  const { screen } = state
  if (screen.kind !== 'home' || screen.takingUp !== kept) return state
  return goOnWith(withoutKept(state, kept), played, services)
}

function withoutKept(state: AppState, kept: KeptBlock): AppState {
  const without = { ...state, kept: state.kept.filter((one) => one !== kept) }
  return state.screen.kind === 'home' ? withScreen(without, atHome(without)) : without
}

/** What could be known before a choice, told beside that choice and no other. */
function believed(play: PlayState, before: BlockState, belief: BeliefSummary): PlayState {
  const decided = play.stage.kind === 'rolling' ? blockOf(play) : play.states.at(-2)
  return decided === before ? { ...play, belief } : play
}
