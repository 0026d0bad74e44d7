import type { KeyBinding } from './binding.js'

/** Keys of practice. */
export const PRACTICE_KEYS: readonly KeyBinding[] = [
  {
    command: 'up',
    keys: ['up', 'k'],
    shown: '↑ k',
    does: 'answer above; more',
    contexts: ['practice'],
    line: { in: ['practice'], keys: '↑ ↓', does: 'answer; more, less' },
  },
  { command: 'down', keys: ['down', 'j'], shown: '↓ j', does: 'answer below; less', contexts: ['practice'] },
  {
    command: 'left',
    keys: ['left', 'h'],
    shown: '← h',
    does: 'figure before; less sure',
    contexts: ['practice'],
    line: { in: ['practice'], keys: '← →', does: 'figure; how sure' },
  },
  { command: 'right', keys: ['right', 'l', 'tab'], shown: '→ l', does: 'figure after; surer', contexts: ['practice'] },
  {
    command: 'enter',
    keys: ['enter'],
    shown: 'Enter',
    does: 'that is my answer; go on',
    contexts: ['practice'],
    line: { in: ['practice'], does: 'answer, go on' },
  },
]
