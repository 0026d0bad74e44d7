import type { Theme } from '../draw/theme.js'
import type { KeyContext, PlainCommand } from '../keys/binding.js'
import { KEY_BINDINGS } from '../keys/keys.js'
import { type KeyHint, keyLine } from './key-line.js'

const ASCII_ARROWS: Readonly<Record<string, string>> = { '↑': 'up', '↓': 'down', '←': 'left', '→': 'right' }

/** A key's name with arrows spelt out where there are no arrows to draw. */
export const shownKey = (shown: string, theme: Theme): string =>
  theme.glyphs.braille ? shown : shown.replace(/[↑↓←→]/g, (arrow) => ASCII_ARROWS[arrow]!)

/** What keys do just now, where that differs from what they do otherwise in the context; null where they do nothing. */
export type KeyWords = Partial<Readonly<Record<PlainCommand, string | null>>>

/** The keys that hold in a context, as its bottom line shows them. */
function contextHints(context: KeyContext, theme: Theme, now: KeyWords): KeyHint[] {
  return KEY_BINDINGS.flatMap(({ command, shown, does, line }) => {
    const words = now[command] === undefined ? (line?.does ?? does) : now[command]
    if (!line?.in.includes(context) || words === null) return []
    return [{ keys: shownKey(line.keys ?? shown, theme), does: words }]
  })
}

/** The bottom line of a context. */
export function contextKeyLine(context: KeyContext, columns: number, theme: Theme, now: KeyWords = {}): string {
  const hints = context === 'rolling' ? [{ keys: 'any key', does: 'skips' }] : contextHints(context, theme, now)
  return ` ${keyLine(hints, columns - 2, theme)}`
}
