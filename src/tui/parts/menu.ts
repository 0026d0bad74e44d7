import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { columnsOf } from '../terminal/fit.js'

/** Entries one under the other; the chosen one carries the pointer. */
export function menuRows(labels: readonly string[], chosen: number, theme: Theme): string[] {
  return labels.map((label, index) =>
    index === chosen ? textRow(theme, [`${theme.glyphs.pointer} ${label}`, 'accent']) : textRow(theme, `  ${label}`),
  )
}

/** Columns a menu takes with a margin on both sides. */
export const menuWidth = (rows: readonly string[]): number => Math.max(0, ...rows.map(columnsOf)) + 4
