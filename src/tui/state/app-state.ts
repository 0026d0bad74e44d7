import type { Scenario } from '../../scenarios/scenario.js'
import type { BlockState } from '../../sim/block/types.js'
import type { Hand } from '../../sim/bowler/profile.js'
import type { KnownGrade } from '../../sim/decision/grade.js'
import type { Command, KeyContext } from '../keys.js'
import type { KeptBlock } from '../services.js'
import type { DebriefState } from './debrief-state.js'
import type { PlayState } from './play-state.js'

export type HomeEntry = 'continue' | 'new' | 'debrief' | 'keys' | 'quit'

export type Screen =
  | { readonly kind: 'home'; readonly cursor: number }
  | { readonly kind: 'scenarios'; readonly cursor: number }
  | { readonly kind: 'bowler'; readonly scenario: Scenario; readonly cursor: number; readonly hand: Hand }
  | { readonly kind: 'play'; readonly play: PlayState }
  | { readonly kind: 'debrief'; readonly play: PlayState; readonly debrief: DebriefState }

export interface AppState {
  readonly screen: Screen
  readonly scenarios: readonly Scenario[]
  readonly kept: KeptBlock | null
  /** The last block played to its end in this sitting. */
  readonly finished: PlayState | null
  readonly help: boolean
  /** Why something asked for did not happen. */
  readonly notice: string
  /** Set when the trainer should close. */
  readonly exitCode: number | null
}

export type Action =
  /** A key by its name. `bagDrawn` tells that the open bag was on screen, whose own list hears most keys itself. */
  | { readonly type: 'key'; readonly name: string; readonly bagDrawn: boolean }
  | { readonly type: 'command'; readonly command: Command }
  | { readonly type: 'ball-chosen'; readonly place: number }
  | { readonly type: 'weighed'; readonly next: BlockState; readonly grade: KnownGrade | null }
  | { readonly type: 'tick' }
  | { readonly type: 'graded'; readonly throwIndex: number; readonly grade: KnownGrade | null }
  | { readonly type: 'ran-on' }
  | { readonly type: 'trouble'; readonly sentence: string }

/** Entries of the home screen: only those that lead somewhere. */
export function homeEntries(state: AppState): readonly HomeEntry[] {
  const entries: (HomeEntry | null)[] = [
    state.kept ? 'continue' : null,
    'new',
    state.finished ? 'debrief' : null,
    'keys',
    'quit',
  ]
  return entries.filter((entry) => entry !== null)
}

/** Which keys hold just now. */
export function keyContext(state: AppState): KeyContext {
  if (state.help) return 'help'
  const { screen } = state
  if (screen.kind !== 'play') return screen.kind
  const { stage, bagOpen } = screen.play
  if (stage.kind === 'rolling' || stage.kind === 'weighing') return 'rolling'
  if (stage.kind === 'deciding') return bagOpen ? 'bag' : 'play'
  return stage.kind
}
