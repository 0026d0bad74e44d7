import { beside, indent, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { KEY_BINDINGS, type KeyBinding, type KeyContext } from '../keys.js'
import { contextKeyLine, shownKey } from '../parts/key-hints.js'

const KEY_COLUMNS = 7
const PLAY_COLUMNS = 42
/** Commands that mean the same in every place and are told once. */
const COMMON: readonly KeyBinding['command'][] = ['back', 'quit', 'help']

/** Every key, by place, from the one table. */
export function helpScreen(size: Size, theme: Theme): string[] {
  const of = (context: KeyContext) => KEY_BINDINGS.filter((binding) => binding.contexts.includes(context))
  const own = (context: KeyContext) => of(context).filter((binding) => !COMMON.includes(binding.command))
  const common = of('scenarios').filter((binding) => COMMON.includes(binding.command))
  const play = sectionRows('Deciding a throw', own('play'), theme)
  const rest = [
    ...sectionRows('Menus', own('bowler'), theme),
    '',
    ...sectionRows('Looking back', own('debrief'), theme),
    '',
    ...sectionRows('Everywhere', common, theme),
    keyRow('Ctrl-C', 'leave; the block is kept', theme),
  ]
  const left = [
    ...play,
    keyRow('1 to 8', 'a ball of the bag', theme),
    keyRow('Ctrl-L', 'draw the screen afresh, anywhere', theme),
  ]
  const body = ['', textRow(theme, [' Keys', 'strong']), '', ...beside(indent(left, 1), PLAY_COLUMNS, rest)]
  return page(body, contextKeyLine('help', size.columns, theme), size)
}

function sectionRows(title: string, bindings: readonly KeyBinding[], theme: Theme): string[] {
  return [
    textRow(theme, [title, 'strong']),
    ...bindings.map((binding) => keyRow(shownKey(binding.shown, theme), binding.does, theme)),
  ]
}

const keyRow = (keys: string, does: string, theme: Theme): string =>
  textRow(theme, [`  ${keys.padEnd(KEY_COLUMNS)}`, 'accent'], ` ${does}`)
