import type { Action, AppState } from './app-state.js'
import { startPosition } from './drill-play.js'
import { homeEntries } from './home-entries.js'
import type { TrainerServices } from './services.js'

type HomeAction = Extract<Action, { type: 'remembered' | 'drill-opened' | 'drill-refused' }>

/** What the home screen asked for has come, or does not come. */
export function reduceHome(state: AppState, action: HomeAction, services: Pick<TrainerServices, 'view'>): AppState {
  if (action.type === 'remembered') {
    return keptInHand(state, { ...state, remembered: action.remembered, waitingDrill: action.drill })
  }
  const { screen } = state
  // Whoever has gone elsewhere meanwhile stays there.
  if (screen.kind !== 'home' || screen.opening !== action.waiting) return state
  if (action.type === 'drill-opened')
    return startPosition(state, { drill: action.drill, place: 0, answered: [] }, services)
  return { ...state, notice: action.sentence, screen: { kind: 'home', cursor: screen.cursor } }
}

/** The hand stays on the entry it is on, whatever entries have come or gone above it. */
function keptInHand(before: AppState, after: AppState): AppState {
  const { screen } = after
  if (screen.kind !== 'home') return after
  const entry = homeEntries(before)[screen.cursor]!
  const cursor = Math.max(0, homeEntries(after).indexOf(entry))
  return { ...after, screen: { ...screen, cursor } }
}
