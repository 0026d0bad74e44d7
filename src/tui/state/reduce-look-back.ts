import type { Account, AccountStep } from '../../sim/analysis/debrief/account.js'
import type { WhatIf } from '../../sim/analysis/explore/what-if.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Command } from '../keys/binding.js'
import { again, isAgain } from './again.js'
import type { AppState, ScreenOf } from './app-state.js'
import { debriefOf, reduceDebrief, reduceOwnAccount, withDearest } from './debrief-state.js'
import { atHome } from './home-entries.js'
import { playMoment } from './play-moment.js'
import { blockOf, type PlayState } from './play-state.js'
import { reducePlay } from './reduce-play.js'
import { handedOver } from './rival.js'
import type { TrainerServices } from './services.js'

/** The debrief's answer to a command. */
export function lookBack(
  state: AppState,
  screen: ScreenOf<'debrief'>,
  command: Command,
  services: TrainerServices,
): AppState {
  const { debrief, play } = screen
  if (debrief.own) return ownAccount(state, screen, command)
  if (debrief.whatIf) return whatIf(state, screen, command, services)
  if (command === 'back') {
    const settings = play.tour === null ? state.settings : { ...state.settings, tour: 'seen' as const }
    return { ...state, settings, screen: atHome(state) }
  }
  if (command === 'enter') {
    const moment = playMoment(state, screen, services)
    if (moment !== state) return moment
  }
  if (isAgain(command)) return again(state, play, command, services)
  if (command === 'other-player') {
    const other = handedOver(play)
    if (other === play) return { ...state, notice: 'Nobody else bowled this block at these keys.' }
    return { ...state, finished: other, screen: { ...screen, play: other, debrief: debriefOf(other) } }
  }
  return { ...state, screen: { ...screen, debrief: reduceDebrief(debrief, command, play) } }
}

function ownAccount(state: AppState, screen: ScreenOf<'debrief'>, command: Command): AppState {
  const { own, finding } = reduceOwnAccount(screen.debrief.own!, command)
  const play = finding ? { ...screen.play, ownFindings: [...screen.play.ownFindings, finding] } : screen.play
  const chosen = own?.throws[own.at] ?? screen.debrief.chosen
  // Once given, the own account stands beside ours.
  const view = own === null && play.ownFindings.length > 0 ? 'findings' : screen.debrief.view
  return withLooked(state, screen, play, { ...screen, play, debrief: { ...screen.debrief, own, chosen, view } })
}

const TRYING: readonly Command[] = ['bag', 'enter', 'lift-oil', 'call', 'belief']

function whatIf(state: AppState, screen: ScreenOf<'debrief'>, command: Command, services: TrainerServices): AppState {
  const trial = screen.debrief.whatIf!
  const debrief =
    command === 'back' && trial.lab.typing === null
      ? { ...screen.debrief, whatIf: null }
      : TRYING.includes(command) && trial.lab.typing === null
        ? screen.debrief
        : { ...screen.debrief, whatIf: { ...trial, lab: reducePlay(trial.lab, command, services) } }
  return { ...state, screen: { ...screen, debrief } }
}

/** The block looked back on stays the same wherever it is shown again in this sitting. */
function withLooked(
  state: AppState,
  screen: ScreenOf<'debrief'>,
  play: PlayState,
  next: ScreenOf<'debrief'> = { ...screen, play },
): AppState {
  const isFinished = state.finished !== null && blockOf(state.finished) === blockOf(play)
  return { ...state, finished: isFinished ? play : state.finished, screen: next }
}

/** One more throw accounted for. */
export function accounted(state: AppState, block: BlockState, { latest }: AccountStep): AppState {
  const { screen } = state
  if (screen.kind !== 'debrief' || blockOf(screen.play) !== block) return state
  if (latest.index !== screen.play.accounts.length) return state
  const { accounts, grades } = screen.play
  const grade = grades[latest.index] ?? latest.graded?.grade ?? null
  const play = { ...screen.play, accounts: [...accounts, latest], grades: grades.with(latest.index, grade) }
  return { ...state, screen: { ...screen, play, debrief: withDearest(screen.debrief, play) } }
}

/** The whole account, in place of what was known of it. */
export function accountWhole(state: AppState, block: BlockState, account: Account): AppState {
  const { screen } = state
  if (screen.kind !== 'debrief' || blockOf(screen.play) !== block) return state
  const play = { ...screen.play, accounts: account.throws, account }
  const looked = { ...screen, play, debrief: withDearest(screen.debrief, play) }
  return { ...withLooked(state, screen, play, looked), remembered: null }
}

/** What a choice tried came to. */
export function triedOut(state: AppState, result: WhatIf): AppState {
  const { screen } = state
  const trial = screen.kind === 'debrief' ? screen.debrief.whatIf : null
  if (screen.kind !== 'debrief' || !trial) return state
  const made = blockOf(screen.play).throws[trial.lab.states.length - 1]!.decision
  const next = {
    ...trial,
    ...(result.decision === made ? { made: result } : {}),
    ...(result.decision === trial.lab.decision ? { tried: result } : {}),
  }
  return { ...state, screen: { ...screen, debrief: { ...screen.debrief, whatIf: next } } }
}
