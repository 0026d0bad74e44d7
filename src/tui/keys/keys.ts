import type { Command, KeyBinding, KeyContext } from './binding.js'
import { COMMON_KEYS } from './common-keys.js'
import { DEBRIEF_KEYS } from './debrief-keys.js'
import { DECIDING, DECIDING_KEYS } from './deciding-keys.js'
import { LUCK_KEYS } from './luck-keys.js'
import { MENU_KEYS } from './menu-keys.js'
import { PRACTICE_KEYS } from './practice-keys.js'

/** The one table of keys: the reader of keys, the bottom line and the help page all come from it. */
export const KEY_BINDINGS: readonly KeyBinding[] = [
  ...MENU_KEYS,
  ...DECIDING_KEYS,
  ...DEBRIEF_KEYS,
  ...PRACTICE_KEYS,
  ...LUCK_KEYS,
  ...COMMON_KEYS,
]

/**
 * What a key means in a context; null where it means nothing. Digits are typed into the field under the hand, letters into a
 * form or a filter. While a ball rolls only the keys that skip it mean anything; others wait in the key reader.
 */
export function commandFor(context: KeyContext, key: string): Command | null {
  if (isFigure(context, key)) return { type: key }
  const bound = KEY_BINDINGS.find((one) => one.contexts.includes(context) && one.keys.includes(key))
  if (bound) return bound.command
  // Any other key takes what was typed and then does what it does.
  if (context === 'typing') return commandFor('play', key)
  if (context !== 'form' && context !== 'filter' && context !== 'naming') return null
  if (key === 'space') return { type: ' ' }
  return [...key].length === 1 ? { type: key } : null
}
const isFigure = (context: KeyContext, key: string): boolean =>
  DECIDING.includes(context) ? /^\d$/.test(key) : context === 'typing' && /^[\d.]$/.test(key)

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
  readonly pageUp: boolean
  readonly pageDown: boolean
  readonly home: boolean
  readonly end: boolean
  readonly ctrl: boolean
}

/** The key's name as the table has it; empty for what the table cannot name. */
export function keyName(input: string, key: PressedKey): string {
  if (key.upArrow) return 'up'
  if (key.downArrow) return 'down'
  if (key.leftArrow) return 'left'
  if (key.rightArrow) return 'right'
  if (key.pageUp) return 'pageup'
  if (key.pageDown) return 'pagedown'
  if (key.home) return 'home'
  if (key.end) return 'end'
  if (key.return) return 'enter'
  if (key.escape) return 'escape'
  if (key.tab) return 'tab'
  if (key.backspace) return 'backspace'
  if (key.ctrl) return ''
  return input === ' ' ? 'space' : input
}
