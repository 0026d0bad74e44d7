/** Where the trainer is, as far as keys go. */
export type KeyContext =
  | 'home'
  | 'scenarios'
  | 'bowler'
  | 'play'
  | 'bag'
  | 'rolling'
  | 'leaving'
  | 'done'
  | 'debrief'
  | 'help'

export type Command =
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'enter'
  | 'back'
  | 'help'
  | 'quit'
  | 'undo'
  | 'bag'
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
  | 'wear'
  | 'run'
  | 'costly'
  | { readonly ball: number }

export interface KeyBinding {
  readonly command: Exclude<Command, object>
  readonly keys: readonly string[]
  /** As it stands on screen. */
  readonly shown: string
  readonly does: string
  readonly contexts: readonly KeyContext[]
  /** Contexts whose bottom line mentions it, and how, where that is shorter than the help page. */
  readonly line?: { readonly in: readonly KeyContext[]; readonly keys?: string; readonly does?: string }
}

const MENUS: readonly KeyContext[] = ['home', 'scenarios', 'bowler']
const EVERYWHERE: readonly KeyContext[] = [...MENUS, 'play', 'bag', 'done', 'debrief']

/** The one table of keys: the reader of keys, the bottom line and the help page all come from it. */
export const KEY_BINDINGS: readonly KeyBinding[] = [
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'entry above', contexts: MENUS },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'entry below',
    contexts: MENUS,
    line: { in: MENUS, keys: '↑ ↓', does: 'move' },
  },
  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'the other hand',
    contexts: ['bowler'],
    line: { in: ['bowler'], keys: '← →', does: 'left- or right-handed' },
  },
  { command: 'right', keys: ['right', 'l'], shown: '→ l', does: 'the same', contexts: ['bowler'] },
  { command: 'enter', keys: ['enter'], shown: 'Enter', does: 'choose', contexts: MENUS, line: { in: MENUS } },

  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'throw',
    contexts: ['play'],
    line: { in: ['play'] },
  },
  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'the field before',
    contexts: ['play'],
    line: { in: ['play'], keys: '← →', does: 'field' },
  },
  { command: 'right', keys: ['right', 'l', 'tab'], shown: '→ l', does: 'the field after', contexts: ['play'] },
  {
    command: 'up',
    keys: ['up', 'k'],
    shown: '↑ k',
    does: 'left; firmer; ball before',
    contexts: ['play'],
    line: { in: ['play'], keys: '↑ ↓', does: 'left, right' },
  },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'right; softer; ball after',
    contexts: ['play'],
  },
  {
    command: 'parallel-left',
    keys: ['['],
    shown: '[',
    does: '2 and 1 left',
    contexts: ['play'],
    line: { in: ['play'], keys: '[ ]', does: '2 and 1' },
  },
  { command: 'parallel-right', keys: [']'], shown: ']', does: '2 and 1 right', contexts: ['play'] },
  {
    command: 'bag',
    keys: ['b'],
    shown: 'b',
    does: 'look into the bag',
    contexts: ['play'],
    line: { in: ['play'], does: 'bag' },
  },
  // The open bag hears its own keys; here they are only named.
  { command: 'down', keys: [], shown: '↑ ↓', does: 'look', contexts: ['bag'], line: { in: ['bag'] } },
  { command: 'enter', keys: [], shown: 'Enter', does: 'take it', contexts: ['bag'], line: { in: ['bag'] } },
  { command: 'pick-feet', keys: ['f'], shown: 'f', does: 'go to feet', contexts: ['play'] },
  { command: 'pick-target', keys: ['t'], shown: 't', does: 'go to target', contexts: ['play'] },
  { command: 'pick-speed', keys: ['s'], shown: 's', does: 'go to speed', contexts: ['play'] },
  { command: 'pick-release', keys: ['r'], shown: 'r', does: 'go to release', contexts: ['play'] },
  {
    command: 'undo',
    keys: ['u', 'backspace'],
    shown: 'u',
    does: 'undo the last change',
    contexts: ['play'],
    line: { in: ['play'], does: 'undo' },
  },
  {
    command: 'half-left',
    keys: [','],
    shown: ',',
    does: 'half a board left',
    contexts: ['play'],
    line: { in: ['play'], keys: ', .', does: 'by halves' },
  },
  { command: 'half-right', keys: ['.'], shown: '.', does: 'half a board right', contexts: ['play'] },
  {
    command: 'lift-oil',
    keys: ['e'],
    shown: 'e',
    does: 'end the block, lift the oil',
    contexts: ['play'],
  },

  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'yes, end it',
    contexts: ['leaving'],
    line: { in: ['leaving'] },
  },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'lift the oil',
    contexts: ['done'],
    line: { in: ['done'] },
  },

  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'the throw before',
    contexts: ['debrief'],
    line: { in: ['debrief'], keys: '← →', does: 'throw by throw' },
  },
  { command: 'right', keys: ['right', 'l', 'enter'], shown: '→ l', does: 'the throw after', contexts: ['debrief'] },
  {
    command: 'costly',
    keys: ['n', 'tab'],
    shown: 'n',
    does: 'next costly choice',
    contexts: ['debrief'],
    line: { in: ['debrief'] },
  },
  {
    command: 'wear',
    keys: ['w'],
    shown: 'w',
    does: 'oil, or what is gone of it',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'oil or wear' },
  },
  {
    command: 'run',
    keys: ['p', 'space'],
    shown: 'p',
    does: 'run through the throws',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'run' },
  },

  {
    command: 'back',
    keys: ['escape'],
    shown: 'Esc',
    does: 'one level back',
    contexts: ['scenarios', 'bowler', 'play', 'bag', 'leaving', 'done', 'debrief', 'help'],
    line: { in: ['scenarios', 'bowler', 'bag', 'leaving', 'done', 'debrief', 'help'], does: 'back' },
  },
  {
    command: 'quit',
    keys: ['q'],
    shown: 'q',
    does: 'quit; the block is kept',
    contexts: EVERYWHERE,
    line: { in: ['home'], does: 'quit' },
  },
  {
    command: 'help',
    keys: ['?'],
    shown: '?',
    does: 'these keys',
    contexts: EVERYWHERE,
    line: { in: EVERYWHERE, does: 'keys' },
  },
  { command: 'help', keys: ['?'], shown: '?', does: 'close', contexts: ['help'] },
]

/** What a key means in a context; null where it means nothing. A digit picks a ball; any key ends an animation. */
export function commandFor(context: KeyContext, key: string): Command | null {
  if (context === 'rolling') return 'skip'
  if (context === 'play' && /^[1-8]$/.test(key)) return { ball: Number(key) - 1 }
  return KEY_BINDINGS.find((one) => one.contexts.includes(context) && one.keys.includes(key))?.command ?? null
}

/** Part of Ink's key record that names a key. */
export interface PressedKey {
  readonly upArrow: boolean
  readonly downArrow: boolean
  readonly leftArrow: boolean
  readonly rightArrow: boolean
  readonly return: boolean
  readonly escape: boolean
  readonly tab: boolean
  readonly backspace: boolean
  readonly ctrl: boolean
}

/** The key's name as the table has it; empty for what the table cannot name. */
export function keyName(input: string, key: PressedKey): string {
  if (key.upArrow) return 'up'
  if (key.downArrow) return 'down'
  if (key.leftArrow) return 'left'
  if (key.rightArrow) return 'right'
  if (key.return) return 'enter'
  if (key.escape) return 'escape'
  if (key.tab) return 'tab'
  if (key.backspace) return 'backspace'
  if (key.ctrl) return ''
  return input === ' ' ? 'space' : input
}
