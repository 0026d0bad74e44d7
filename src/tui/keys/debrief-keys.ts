import type { KeyBinding } from './binding.js'

/** Keys of looking back. */
export const DEBRIEF_KEYS: readonly KeyBinding[] = [
  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'the throw before',
    contexts: ['debrief'],
    line: { in: ['debrief'], keys: '← →', does: 'throws' },
  },
  { command: 'right', keys: ['right', 'l'], shown: '→ l', does: 'the throw after', contexts: ['debrief'] },
  { command: 'enter', keys: ['enter'], shown: 'Enter', does: 'play a finding again', contexts: ['debrief'] },
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
    line: { in: ['debrief'], does: 'costly' },
  },
  {
    command: 'wear',
    keys: ['w'],
    shown: 'w',
    does: 'oil, removed, as you saw it',
    contexts: ['debrief'],
    line: { in: ['debrief'], does: 'oil' },
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
  },
]
