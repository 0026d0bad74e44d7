import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { columnsOf } from '../terminal/fit.js'

export interface KeyHint {
  readonly keys: string
  readonly does: string
}

/** Keys and what they do, as many as fit; the last hint (help) always shows. */
export function keyLine(hints: readonly KeyHint[], columns: number, theme: Theme): string {
  const last = hints.at(-1)
  if (!last) return ''
  const width = (hint: KeyHint) => columnsOf(`${hint.keys} ${hint.does}`)
  const gap = 2
  let room = columns - 1 - width(last)
  const shown: KeyHint[] = []
  for (const hint of hints.slice(0, -1)) {
    room -= width(hint) + gap
    if (room < 0) break
    shown.push(hint)
  }
  const spans = [...shown, last].flatMap((hint, index) => [
    index === 0 ? '' : ' '.repeat(gap),
    [hint.keys, 'accent'] as const,
    [` ${hint.does}`, 'faint'] as const,
  ])
  return textRow(theme, ...spans)
}
