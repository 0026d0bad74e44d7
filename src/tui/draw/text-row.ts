import { visibleLine } from '../../scenarios/files/text/visible-text.js'
import { clipRow, columnsOf } from '../terminal/fit.js'
import type { Ink, Theme } from './theme.js'

const RESET = '\u001B[0m'

/** A stretch of text in one ink, without styles of its own; a bare string is plain. */
export type Span = string | readonly [text: string, ink: Ink]

/** Spans joined into one styled row; what is hidden in them is shown. */
export function textRow(theme: Theme, ...spans: readonly Span[]): string {
  return spans
    .map((span) => {
      if (typeof span === 'string') return visibleLine(span)
      const style = theme.style(span[1], undefined)
      const text = visibleLine(span[0])
      return style === '' || text === '' ? text : style + text + RESET
    })
    .join('')
}

/** A row with one part at the left end and one at the right; the left part gives way when they meet. */
export function spreadRow(left: string, right: string, columns: number): string {
  const room = columns - columnsOf(right)
  const start = clipRow(left, Math.max(0, room - 1))
  return start + ' '.repeat(Math.max(0, room - columnsOf(start))) + right
}
