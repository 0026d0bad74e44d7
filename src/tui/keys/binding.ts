/** Where the trainer is, as far as keys go. */
export type KeyContext =
  | 'home'
  | 'scenarios'
  | 'bowler'
  | 'past'
  | 'progress'
  | 'filter'
  | 'kit'
  | 'form'
  | 'settings'
  | 'play'
  | 'typing'
  | 'bag'
  | 'call'
  | 'belief'
  | 'history'
  | 'weighing'
  | 'rolling'
  | 'leaving'
  | 'done'
  | 'drill-done'
  | 'drill-over'
  | 'own-account'
  | 'debrief'
  | 'what-if'
  | 'help'

export type PlainCommand =
  | 'up'
  | 'down'
  | 'page-up'
  | 'page-down'
  | 'first'
  | 'last'
  | 'filter'
  | 'left'
  | 'right'
  | 'enter'
  | 'back'
  | 'help'
  | 'quit'
  | 'undo'
  | 'erase'
  | 'remove'
  | 'bag'
  | 'call'
  | 'belief'
  | 'mode'
  | 'style'
  | 'tour'
  | 'pick-feet'
  | 'pick-target'
  | 'pick-speed'
  | 'pick-release'
  | 'half-left'
  | 'half-right'
  | 'parallel-left'
  | 'parallel-right'
  | 'lift-oil'
  | 'skip'
  | 'view'
  | 'wear'
  | 'run'
  | 'roll'
  | 'costly'
  | 'what-if'
export type Command = PlainCommand | { readonly type: string }

export interface KeyBinding {
  readonly command: PlainCommand
  readonly keys: readonly string[]
  /** As it stands on screen. */
  readonly shown: string
  readonly does: string
  readonly contexts: readonly KeyContext[]
  /** Contexts whose bottom line mentions it, and how, where that is shorter than the help page. */
  readonly line?: { readonly in: readonly KeyContext[]; readonly keys?: string; readonly does?: string }
}
