import { clickable } from '../../draw/hits.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { SETTING_ROWS, type Settings } from '../../settings/settings.js'
import { wrapWords } from '../../terminal/fit.js'

const LABEL_COLUMNS = 14
const LIST_COLUMNS = 46

/** Every setting with its value, and what the one under the hand is for. */
export function settingsScreen(settings: Settings, cursor: number, notice: string, size: Size, theme: Theme): string[] {
  const { pointer, left, right } = theme.glyphs
  const list = SETTING_ROWS.map((setting, index) => {
    const isChosen = index === cursor
    const words = (setting.values as Readonly<Record<string, string>>)[settings[setting.key]] ?? ''
    const label = setting.label.padEnd(LABEL_COLUMNS)
    return clickable(
      isChosen
        ? textRow(theme, [` ${pointer} ${label}${left} ${words} ${right}`, 'accent'])
        : textRow(theme, `   ${label}  ${words}`),
      { kind: 'entry', place: index },
    )
  })
  const about = wrapWords(SETTING_ROWS[cursor]?.about ?? '', Math.min(60, size.columns - LIST_COLUMNS - 2))
  const body = [
    '',
    textRow(theme, [' Settings', 'strong'], ['  kept as they are changed', 'faint']),
    '',
    ...beside(
      list,
      LIST_COLUMNS,
      about.map((row) => textRow(theme, [row, 'faint'])),
    ),
    '',
    textRow(theme, [` ${notice}`, 'loss']),
  ]
  return page(body, contextKeyLine('settings', size.columns, theme), size)
}
