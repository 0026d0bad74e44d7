/** Where the trainer is, as far as keys go. */
export type KeyContext =
  | 'home'
  | 'scenarios'
  | 'bowler'
  | 'past'
  | 'kit'
  | 'form'
  | 'settings'
  | 'play'
  | 'bag'
  | 'call'
  | 'belief'
  | 'weighing'
  | 'rolling'
  | 'leaving'
  | 'done'
  | 'own-account'
  | 'debrief'
  | 'what-if'
  | 'help'

export type PlainCommand =
  | 'up'
  | 'down'
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
export type Command = PlainCommand | { readonly ball: number } | { readonly type: string }

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

const LISTS: readonly KeyContext[] = ['home', 'scenarios', 'bowler', 'past', 'kit', 'settings', 'own-account']
const CHOSEN_BY_ENTER: readonly KeyContext[] = ['home', 'scenarios', 'bowler', 'past', 'kit', 'own-account']
const DECIDING: readonly KeyContext[] = ['play', 'what-if']
const BACK: readonly KeyContext[] = [
  'scenarios',
  'bowler',
  'past',
  'kit',
  'form',
  'settings',
  'play',
  'bag',
  'call',
  'belief',
  'weighing',
  'leaving',
  'done',
  'own-account',
  'debrief',
  'what-if',
  'help',
]
/** Everywhere but where letters are typed. */
const COMMANDING: readonly KeyContext[] = [...LISTS, 'play', 'bag', 'call', 'weighing', 'done', 'debrief', 'what-if']

/** The one table of keys: the reader of keys, the bottom line and the help page all come from it. */
export const KEY_BINDINGS: readonly KeyBinding[] = [
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'entry above', contexts: LISTS },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'entry below',
    contexts: LISTS,
    line: { in: LISTS, keys: '↑ ↓', does: 'move' },
  },
  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'the other hand',
    contexts: ['bowler'],
    line: { in: ['bowler'], keys: '← →', does: 'hand' },
  },
  { command: 'right', keys: ['right', 'l'], shown: '→ l', does: 'the same', contexts: ['bowler'] },
  {
    command: 'style',
    keys: ['s'],
    shown: 's',
    does: 'style of a typical bowler',
    contexts: ['bowler'],
    line: { in: ['bowler'], does: 'style' },
  },
  {
    command: 'bag',
    keys: ['b'],
    shown: 'b',
    does: "the scenario's bag or your own",
    contexts: ['bowler'],
    line: { in: ['bowler'], does: 'bag' },
  },
  {
    command: 'mode',
    keys: ['m'],
    shown: 'm',
    does: 'when grades are told',
    contexts: ['bowler'],
    line: { in: ['bowler'], does: 'grades' },
  },
  { command: 'left', keys: ['left', 'h'], shown: '← h', does: 'the value before', contexts: ['settings'] },
  {
    command: 'right',
    keys: ['right', 'l', 'enter', 'space'],
    shown: '→ l',
    does: 'the value after',
    contexts: ['settings'],
    line: { in: ['settings'], keys: '← →', does: 'change' },
  },
  {
    command: 'remove',
    keys: ['x'],
    shown: 'x',
    does: 'take out of your bag',
    contexts: ['kit'],
    line: { in: ['kit'], does: 'take out' },
  },
  { command: 'undo', keys: ['u'], shown: 'u', does: 'undo', contexts: ['kit'], line: { in: ['kit'] } },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'choose',
    contexts: CHOSEN_BY_ENTER,
    line: { in: CHOSEN_BY_ENTER },
  },

  { command: 'up', keys: ['up'], shown: '↑', does: 'line above', contexts: ['form'] },
  {
    command: 'down',
    keys: ['down', 'tab'],
    shown: '↓',
    does: 'line below',
    contexts: ['form'],
    line: { in: ['form'], keys: '↑ ↓', does: 'line' },
  },
  { command: 'left', keys: ['left'], shown: '←', does: 'less; the word before', contexts: ['form'] },
  {
    command: 'right',
    keys: ['right'],
    shown: '→',
    does: 'more; the word after',
    contexts: ['form'],
    line: { in: ['form'], keys: '← →', does: 'change, or type' },
  },
  { command: 'erase', keys: ['backspace'], shown: 'Bksp', does: 'erase a letter', contexts: ['form'] },
  { command: 'enter', keys: ['enter'], shown: 'Enter', does: 'keep it', contexts: ['form'], line: { in: ['form'] } },

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
    contexts: DECIDING,
    line: { in: DECIDING, keys: '← →', does: 'field' },
  },
  { command: 'right', keys: ['right', 'l', 'tab'], shown: '→ l', does: 'the field after', contexts: DECIDING },
  {
    command: 'up',
    keys: ['up', 'k'],
    shown: '↑ k',
    does: 'left; firmer; ball before',
    contexts: DECIDING,
    line: { in: DECIDING, keys: '↑ ↓', does: 'left, right' },
  },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'right; softer; ball after',
    contexts: DECIDING,
  },
  {
    command: 'parallel-left',
    keys: ['['],
    shown: '[',
    does: '2 and 1 left',
    contexts: DECIDING,
    line: { in: DECIDING, keys: '[ ]', does: '2 and 1' },
  },
  { command: 'parallel-right', keys: [']'], shown: ']', does: '2 and 1 right', contexts: DECIDING },
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
  {
    command: 'call',
    keys: ['c'],
    shown: 'c',
    does: 'call the reaction',
    contexts: ['play'],
    line: { in: ['play'], does: 'call' },
  },
  { command: 'left', keys: ['left', 'h'], shown: '← h', does: 'the reaction before', contexts: ['call'] },
  {
    command: 'right',
    keys: ['right', 'l', 'tab'],
    shown: '→ l',
    does: 'the reaction after',
    contexts: ['call'],
    line: { in: ['call'], keys: '← →', does: 'reaction' },
  },
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'surer', contexts: ['call'] },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'less sure',
    contexts: ['call'],
    line: { in: ['call'], keys: '↑ ↓', does: 'how sure' },
  },
  {
    command: 'enter',
    keys: ['enter', 'c'],
    shown: 'Enter',
    does: 'call it',
    contexts: ['call'],
    line: { in: ['call'] },
  },
  {
    command: 'remove',
    keys: ['x', 'backspace'],
    shown: 'x',
    does: 'call nothing',
    contexts: ['call'],
    line: { in: ['call'] },
  },
  {
    command: 'belief',
    keys: ['o'],
    shown: 'o',
    does: 'how sure one could be',
    contexts: ['play'],
  },
  { command: 'back', keys: ['o', 'enter'], shown: 'o', does: 'close', contexts: ['belief'] },
  { command: 'pick-feet', keys: ['f'], shown: 'f', does: 'go to feet', contexts: DECIDING },
  { command: 'pick-target', keys: ['t'], shown: 't', does: 'go to target', contexts: DECIDING },
  { command: 'pick-speed', keys: ['s'], shown: 's', does: 'go to speed', contexts: DECIDING },
  { command: 'pick-release', keys: ['r'], shown: 'r', does: 'go to release', contexts: DECIDING },
  {
    command: 'undo',
    keys: ['u', 'backspace'],
    shown: 'u',
    does: 'undo the last change',
    contexts: DECIDING,
    line: { in: DECIDING, does: 'undo' },
  },
  {
    command: 'half-left',
    keys: [','],
    shown: ',',
    does: 'half a board left',
    contexts: DECIDING,
    line: { in: ['what-if'], keys: ', .', does: 'by halves' },
  },
  { command: 'half-right', keys: ['.'], shown: '.', does: 'half a board right', contexts: DECIDING },
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
    does: 'end it',
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
    line: { in: ['debrief'], keys: '← →', does: 'throws' },
  },
  { command: 'right', keys: ['right', 'l', 'enter'], shown: '→ l', does: 'the throw after', contexts: ['debrief'] },
  {
    command: 'view',
    keys: ['tab', 'v'],
    shown: 'Tab',
    does: 'the next view',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'view' },
  },
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'scroll up', contexts: ['debrief'] },
  { command: 'down', keys: ['down', 'j'], shown: '↓ j', does: 'scroll down', contexts: ['debrief'] },
  {
    command: 'costly',
    keys: ['n'],
    shown: 'n',
    does: 'next costly choice',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'next costly' },
  },
  {
    command: 'wear',
    keys: ['w'],
    shown: 'w',
    does: 'oil, wear, or as you saw it',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'oil, wear, seen' },
  },
  {
    command: 'roll',
    keys: ['r'],
    shown: 'r',
    does: 'roll the balls side by side',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'roll' },
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
    command: 'what-if',
    keys: ['i'],
    shown: 'i',
    does: 'what if: try another choice',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'what if' },
  },

  {
    command: 'back',
    keys: ['escape'],
    shown: 'Esc',
    does: 'one level back',
    contexts: BACK,
    line: { in: BACK.filter((context) => context !== 'play'), does: 'back' },
  },
  {
    command: 'quit',
    keys: ['q'],
    shown: 'q',
    does: 'quit; the block is kept',
    contexts: COMMANDING,
    line: { in: ['home'], does: 'quit' },
  },
  {
    command: 'help',
    keys: ['?'],
    shown: '?',
    does: 'these keys',
    contexts: COMMANDING,
    line: { in: COMMANDING, does: 'keys' },
  },
  { command: 'help', keys: ['?'], shown: '?', does: 'close', contexts: ['help'] },
  {
    command: 'tour',
    keys: ['t'],
    shown: 't',
    does: 'the guided first frame',
    contexts: ['help'],
    line: { in: ['help'] },
  },
]

/**
 * What a key means in a context; null where it means nothing. A digit picks a ball, letters are typed into a form; any key
 * ends an animation.
 */
export function commandFor(context: KeyContext, key: string): Command | null {
  if (context === 'rolling') return 'skip'
  if (DECIDING.includes(context) && /^[1-8]$/.test(key)) return { ball: Number(key) - 1 }
  const bound = KEY_BINDINGS.find((one) => one.contexts.includes(context) && one.keys.includes(key))
  if (bound) return bound.command
  if (context !== 'form') return null
  if (key === 'space') return { type: ' ' }
  return [...key].length === 1 ? { type: key } : null
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
