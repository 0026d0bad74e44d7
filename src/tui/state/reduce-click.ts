import type { Hit } from '../draw/hits.js'
import type { Command } from '../keys/binding.js'
import type { AppState } from './app-state.js'
import { DEBRIEF_VIEWS } from './debrief-state.js'
import { DECISION_FIELDS } from './decision-fields.js'
import type { PlayState } from './play-state.js'
import { pickBoard } from './reduce-play.js'
import type { TrainerServices } from './services.js'

/** Nearer to the foul line than this a click is about the slide, further down about the target. */
const SLIDE_FEET = 8

/** What a click comes to: another state, or a command as if by a key. */
export type Clicked = { readonly state: AppState } | { readonly command: Command }

/** The answer to a click: the first goes to a line or field, one more on the same does what Enter would do there. */
export function clicked(state: AppState, hit: Hit, feet: number, services: TrainerServices): Clicked {
  const { screen } = state
  if (state.help) return { state }
  switch (hit.kind) {
    case 'entry': {
      if (!('cursor' in screen)) return { state }
      if (screen.cursor !== hit.place) return { state: { ...state, screen: { ...screen, cursor: hit.place } } }
      return { command: screen.kind === 'settings' ? 'right' : 'enter' }
    }
    case 'tab':
      if (screen.kind !== 'debrief') return { state }
      return {
        state: {
          ...state,
          screen: { ...screen, debrief: { ...screen.debrief, view: DEBRIEF_VIEWS[hit.place]!, finding: 0, scroll: 0 } },
        },
      }
    case 'field': {
      const field = DECISION_FIELDS[hit.place]!
      return screen.kind === 'play' && field === 'ball' && screen.play.field === 'ball'
        ? { command: 'bag' }
        : { state: onDecision(state, (play) => ({ ...play, field })) }
    }
    case 'lane': {
      const field = feet < SLIDE_FEET ? 'feet' : 'target'
      return { state: onDecision(state, (play) => pickBoard(play, field, hit.board, services)) }
    }
  }
}

function onDecision(state: AppState, change: (play: PlayState) => PlayState): AppState {
  const { screen } = state
  if (screen.kind === 'play' && screen.play.stage.kind === 'deciding' && screen.play.open === 'nothing') {
    return { ...state, screen: { ...screen, play: change(screen.play) } }
  }
  if (screen.kind === 'debrief' && screen.debrief.whatIf) {
    const { whatIf } = screen.debrief
    return {
      ...state,
      screen: { ...screen, debrief: { ...screen.debrief, whatIf: { ...whatIf, lab: change(whatIf.lab) } } },
    }
  }
  return state
}
