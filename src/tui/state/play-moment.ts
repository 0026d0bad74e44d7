import { noNotes } from '../../scenarios/store/block-notes.js'
import type { AppState, ScreenOf } from './app-state.js'
import { blockOf, type PlayState, pinsGiven, playFrom } from './play-state.js'
import type { TrainerServices } from './services.js'

/**
 * The moment of the finding pointed at, to be decided again with its grade at once, on the same oil and the same luck. Nothing
 * of it is kept. The state as it was where there is no such finding.
 */
export function playMoment(state: AppState, screen: ScreenOf<'debrief'>, services: TrainerServices): AppState {
  const { play, debrief } = screen
  const tag = play.account?.tags[debrief.finding]
  if (debrief.view !== 'findings' || !tag) return state
  const states = play.states.slice(0, tag.at + 1)
  const grades = play.grades.slice(0, tag.at)
  const begun = playFrom(play.scenario, states, grades, services.view(states.at(-1)!)?.suggestion, noNotes('drill'))
  const moment = { thenPins: pinsGiven(play.grades[tag.at]) }
  const played: PlayState = { ...begun, ownThrows: grades.map(() => false), moment }
  return { ...state, momentFrom: screen, screen: { kind: 'play', play: played } }
}

/** Back to where a moment is played again from; null where none is. */
export function backFromMoment(state: AppState): AppState | null {
  const { momentFrom } = state
  return momentFrom && { ...state, notice: '', momentFrom: null, screen: momentFrom }
}

/** The moment ends with its frame. */
export function isMomentOver(play: PlayState): boolean {
  if (!play.moment) return false
  const { throws, spot } = blockOf(play)
  const from = throws[play.ownThrows?.length ?? 0]?.spot
  return from !== undefined && (spot?.frame !== from.frame || spot.game !== from.game)
}

/** What the first choice of the moment costs this time. */
export const momentPins = (play: PlayState): number => pinsGiven(play.grades[play.ownThrows?.length ?? 0])
