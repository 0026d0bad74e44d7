import type { AppState, Averages } from './app-state.js'

/** The averages of the bowler in the form; those of an earlier draft are of no use any more. */
export function averaged(state: AppState, averages: Pick<Averages, 'of'> & Partial<Averages>): AppState {
  const { screen } = state
  if (screen.kind !== 'own-bowler' || screen.form.draft !== averages.of) return state
  const before = screen.averages?.of === averages.of ? screen.averages : { house: null, sport: null }
  return { ...state, screen: { ...screen, averages: { ...before, ...averages } } }
}
