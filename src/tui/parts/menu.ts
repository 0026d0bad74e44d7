import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { columnsOf } from '../terminal/fit.js'

/** Entries one under the other; the chosen one carries the pointer. */
export function menuRows(labels: readonly string[], chosen: number, theme: Theme): string[] {
  return labels.map((label, index) =>
    index === chosen ? textRow(theme, [`${theme.glyphs.pointer} ${label}`, 'accent']) : textRow(theme, `  ${label}`),
  )
}

/** Rows that tell of entries out of sight, above and below. */
const EDGE_ROWS = 2

/** A menu in at most so many rows: where it is longer, the chosen entry stays in sight and the ends tell how many do not. */
export function scrolledMenuRows(labels: readonly string[], chosen: number, rows: number, theme: Theme): string[] {
  if (labels.length <= rows) return menuRows(labels, chosen, theme)
  const room = Math.max(1, rows - EDGE_ROWS)
  const first = Math.max(0, Math.min(chosen - Math.floor(room / 2), labels.length - room))
  const after = labels.length - first - room
  const edge = (count: number, where: string) =>
    count === 0 ? '' : textRow(theme, [`  ${theme.glyphs.ellipsis} ${count} more ${where}`, 'faint'])
  return [
    edge(first, 'above'),
    ...menuRows(labels.slice(first, first + room), chosen - first, theme),
    edge(after, 'below'),
  ]
}

/** Columns a menu takes with a margin on both sides. */
export const menuWidth = (rows: readonly string[]): number => Math.max(0, ...rows.map(columnsOf)) + 4
