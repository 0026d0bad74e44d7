import { beside, indent, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { KEY_BINDINGS, type KeyBinding, type KeyContext } from '../keys.js'
import { contextKeyLine, shownKey } from '../parts/key-hints.js'

const KEY_COLUMNS = 7
const PAGES: readonly (readonly [title: string, context: KeyContext])[] = [
  ['Menus', 'bowler'],
  ['Deciding a throw', 'play'],
  ['Looking back', 'debrief'],
]

/** Every key, by place, from the one table. */
export function helpScreen(size: Size, theme: Theme): string[] {
  const [menus, play, debrief] = PAGES.map(([title, context]) => sectionRows(title, context, theme))
  const half = Math.floor(size.columns / 2)
  const everywhere = [
    textRow(theme, ['  1 to 8 ', 'accent'], ['  a ball of the bag, while deciding', 'faint']),
    textRow(theme, ['  Ctrl-C ', 'accent'], ['  leave at once; what was thrown is kept', 'faint']),
  ]
  const body = [
    '',
    textRow(theme, [' Keys', 'strong']),
    '',
    ...beside(indent(play!, 1), half, [...menus!, '', ...debrief!, '', ...everywhere]),
  ]
  return page(body, contextKeyLine('help', size.columns, theme), size)
}

function sectionRows(title: string, context: KeyContext, theme: Theme): string[] {
  const row = (binding: KeyBinding) => {
    const keys = shownKey(binding.shown, theme).padEnd(KEY_COLUMNS)
    return textRow(theme, [`  ${keys}`, 'accent'], [` ${binding.does}`, 'plain'])
  }
  const bindings = KEY_BINDINGS.filter((binding) => binding.contexts.includes(context))
  return [textRow(theme, [title, 'strong']), ...bindings.map(row)]
}
