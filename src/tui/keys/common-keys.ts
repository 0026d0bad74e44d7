import type { KeyBinding, KeyContext } from './binding.js'
import { LISTS } from './menu-keys.js'

const BACK: readonly KeyContext[] = [
  'scenarios',
  'bowler',
  'past',
  'progress',
  'filter',
  'naming',
  'kit',
  'form',
  'settings',
  'play',
  'typing',
  'bag',
  'call',
  'belief',
  'history',
  'weighing',
  'leaving',
  'passing',
  'done',
  'drill-done',
  'drill-over',
  'own-account',
  'debrief',
  'what-if',
  'practice',
  'help',
]
/** Pages longer than the screen. */
const SCROLLED: readonly KeyContext[] = ['help', 'progress']
/** Everywhere but where letters are typed. */
const COMMANDING: readonly KeyContext[] = [
  ...LISTS,
  'play',
  'bag',
  'call',
  'weighing',
  'passing',
  'done',
  'drill-done',
  'drill-over',
  'progress',
  'debrief',
  'what-if',
  'practice',
]

/** Keys that mean the same wherever they mean anything, told last on every bottom line. */
export const COMMON_KEYS: readonly KeyBinding[] = [
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
    command: 'view',
    keys: ['tab', 'left', 'right', 'space'],
    shown: 'Tab',
    does: 'keys, words of the trade',
    contexts: ['help'],
    line: { in: ['help'] },
  },
  { command: 'up', keys: ['up', 'k'], shown: '↑ k', does: 'a row up', contexts: SCROLLED },
  {
    command: 'down',
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'a row down',
    contexts: SCROLLED,
    line: { in: SCROLLED, keys: '↑ ↓', does: 'scroll' },
  },
  {
    command: 'tour',
    keys: ['t'],
    shown: 't',
    does: 'the guided first frame',
    contexts: ['help'],
    line: { in: ['help'] },
  },
]
