import { clickable } from '../draw/hits.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { columnsOf } from '../terminal/fit.js'

/** Entries one under the other; the chosen one carries the pointer. `first` is the number of the first in the whole list. */
export function menuRows(labels: readonly string[], chosen: number, theme: Theme, first = 0): string[] {
  return labels.map((label, index) =>
    clickable(
      index === chosen ? textRow(theme, [`${theme.glyphs.pointer} ${label}`, 'accent']) : textRow(theme, `  ${label}`),
      { kind: 'entry', place: first + index },
    ),
  )
}

/** Rows that tell of entries out of sight at one end. */
const EDGE_ROWS = 1

/** A menu in at most so many rows: where it is longer, the chosen entry stays in sight and the ends tell how many do not. */
export function scrolledMenuRows(labels: readonly string[], chosen: number, rows: number, theme: Theme): string[] {
  if (labels.length <= rows) return menuRows(labels, chosen, theme)
  const middle = Math.max(1, rows - 2 * EDGE_ROWS)
  const wanted = chosen - Math.floor(middle / 2)
  // At either end there is nothing to tell of on that side, and its row holds an entry.
  const isFirst = wanted <= EDGE_ROWS
  const isLast = wanted + middle >= labels.length - EDGE_ROWS
  const first = isFirst ? 0 : isLast ? labels.length - rows + EDGE_ROWS : wanted
  const last = isLast ? labels.length : isFirst ? rows - EDGE_ROWS : wanted + middle
  const edge = (count: number, where: string) =>
    count === 0 ? [] : [textRow(theme, [`  ${theme.glyphs.ellipsis} ${count} more ${where}`, 'faint'])]
  return [
    ...edge(first, 'above'),
    ...menuRows(labels.slice(first, last), chosen - first, theme, first),
    ...edge(labels.length - last, 'below'),
  ]
}

/** Columns a menu takes with a margin on both sides. */
export const menuWidth = (rows: readonly string[]): number => Math.max(0, ...rows.map(columnsOf)) + 4
