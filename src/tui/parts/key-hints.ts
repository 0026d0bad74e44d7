import type { Theme } from '../draw/theme.js'
import type { KeyContext } from '../keys/binding.js'
import { KEY_BINDINGS } from '../keys.js'
import { type KeyHint, keyLine } from './key-line.js'

const ASCII_ARROWS: Readonly<Record<string, string>> = { '↑': 'up', '↓': 'down', '←': 'left', '→': 'right' }

/** A key's name with arrows spelt out where there are no arrows to draw. */
export const shownKey = (shown: string, theme: Theme): string =>
  theme.glyphs.braille ? shown : shown.replace(/[↑↓←→]/g, (arrow) => ASCII_ARROWS[arrow]!)

/** The keys that hold in a context, as its bottom line shows them. */
function contextHints(context: KeyContext, theme: Theme): KeyHint[] {
  return KEY_BINDINGS.flatMap(({ shown, does, line }) =>
    line?.in.includes(context) ? [{ keys: shownKey(line.keys ?? shown, theme), does: line.does ?? does }] : [],
  )
}

/** The bottom line of a context. */
export function contextKeyLine(context: KeyContext, columns: number, theme: Theme): string {
  const hints = context === 'rolling' ? [{ keys: 'any key', does: 'skips' }] : contextHints(context, theme)
  return ` ${keyLine(hints, columns - 2, theme)}`
}
