import type { KeyBinding, KeyContext } from './binding.js'

/** Screens that are a list to choose from. */
export const LISTS: readonly KeyContext[] = ['home', 'scenarios', 'bowler', 'past', 'kit', 'settings', 'own-account']
/** Lists long enough to be filtered. */
const FILTERED: readonly KeyContext[] = ['scenarios', 'past']
const PAGED: readonly KeyContext[] = [...LISTS, 'debrief', 'help', 'progress']
const CHOSEN_BY_ENTER: readonly KeyContext[] = ['home', 'scenarios', 'bowler', 'past', 'kit', 'own-account']

/** Keys of lists and of forms. */
export const MENU_KEYS: readonly KeyBinding[] = [
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'entry above', contexts: LISTS },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'entry below',
    contexts: LISTS,
    line: { in: LISTS, keys: '↑ ↓', does: 'move' },
  },
  { command: 'page-up', keys: ['pageup'], shown: 'PgUp', does: 'a page up', contexts: PAGED },
  { command: 'page-down', keys: ['pagedown'], shown: 'PgDn', does: 'a page down', contexts: PAGED },
  { command: 'first', keys: ['home'], shown: 'Home', does: 'the first', contexts: PAGED },
  { command: 'last', keys: ['end'], shown: 'End', does: 'the last', contexts: PAGED },
  {
    command: 'filter',
    keys: ['/'],
    shown: '/',
    does: 'only what holds these words',
    contexts: FILTERED,
    line: { in: FILTERED, does: 'filter' },
  },
  { command: 'up', keys: ['up'], shown: '↑', does: 'entry above', contexts: ['filter'] },
  { command: 'down', keys: ['down'], shown: '↓', does: 'entry below', contexts: ['filter'] },
  { command: 'erase', keys: ['backspace'], shown: 'Bksp', does: 'erase a letter', contexts: ['filter'] },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'choose among these',
    contexts: ['filter'],
    line: { in: ['filter'] },
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
  },
  {
    command: 'bag',
    keys: ['b'],
    shown: 'b',
    does: "the scenario's bag or yours",
    contexts: ['bowler'],
  },
  {
    command: 'mode',
    keys: ['m'],
    shown: 'm',
    does: 'when grades are told',
    contexts: ['bowler'],
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
]
