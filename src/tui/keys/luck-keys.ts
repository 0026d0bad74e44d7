import type { KeyBinding } from './binding.js'

/** Keys of the luck a block has, and of who else bowls it. */
export const LUCK_KEYS: readonly KeyBinding[] = [
  {
    command: 'seed',
    keys: ['e'],
    shown: 'e',
    does: 'set the seed of oil and luck',
    contexts: ['bowler'],
  },
  {
    command: 'against',
    keys: ['g'],
    shown: 'g',
    does: 'two at these keys by turns',
    contexts: ['bowler'],
  },
  {
    command: 'against',
    keys: ['g'],
    shown: 'g',
    does: 'bowl against that block',
    contexts: ['past'],
    line: { in: ['past'], does: 'bowl against it' },
  },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'take it',
    contexts: ['naming'],
    line: { in: ['naming'] },
  },
  { command: 'erase', keys: ['backspace'], shown: 'Bksp', does: 'erase a letter', contexts: ['naming'] },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'hand over the keys',
    contexts: ['passing'],
    line: { in: ['passing'] },
  },
  {
    command: 'same-luck',
    keys: ['a'],
    shown: 'a',
    does: 'same lane, same luck again',
    contexts: ['done', 'debrief'],
    line: { in: ['done'], does: 'same luck again' },
  },
  {
    command: 'other-luck',
    keys: ['o'],
    shown: 'o',
    does: 'same lane, other luck',
    contexts: ['done', 'debrief'],
    line: { in: ['done'], does: 'other luck' },
  },
  {
    command: 'other-player',
    keys: ['g'],
    shown: 'g',
    does: "the other player's block",
    contexts: ['done', 'debrief'],
    line: { in: ['done'], does: 'the other block' },
  },
]
