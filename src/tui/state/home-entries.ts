import type { AppState, ScreenOf } from './app-state.js'

export type HomeEntry =
  | 'continue'
  | 'practice'
  | 'drill'
  | 'new'
  | 'today'
  | 'debrief'
  | 'past'
  | 'progress'
  | 'kit'
  | 'settings'
  | 'keys'
  | 'quit'

/** What entries there are hangs on. */
type HomeParts = Pick<AppState, 'kept' | 'finished' | 'hasPast' | 'waitingDrill'>

/** Entries of the home screen: only those that lead somewhere. */
export function homeEntries(state: HomeParts): readonly HomeEntry[] {
  const entries: (HomeEntry | null)[] = [
    state.kept.length > 0 ? 'continue' : null,
    'practice',
    state.waitingDrill ? 'drill' : null,
    'new',
    'today',
    state.finished ? 'debrief' : null,
    state.hasPast ? 'past' : null,
    state.hasPast ? 'progress' : null,
    'kit',
    'settings',
    'keys',
    'quit',
  ]
  return entries.filter((entry) => entry !== null)
}

/** The home screen with the hand on what most go on with: the unfinished block, else a new one. */
export function atHome(state: HomeParts): ScreenOf<'home'> {
  const entries = homeEntries(state)
  return { kind: 'home', cursor: Math.max(0, entries.indexOf(entries.includes('continue') ? 'continue' : 'new')) }
}

export const goHome = (state: AppState): AppState => ({ ...state, screen: atHome(state) })
