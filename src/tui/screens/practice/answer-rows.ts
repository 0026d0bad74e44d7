import { FAMILY_NAMES, offeredWords, READ_UNITS } from '../../../scenarios/words/practice-words.js'
import { boardWords } from '../../../scenarios/words/words.js'
import type { Position } from '../../../sim/analysis/practice/position.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import type { Decision } from '../../../sim/world/block/types.js'
import type { Hand } from '../../../sim/world/bowler/profile.js'
import { clickable } from '../../draw/hits.js'
import { beside } from '../../draw/layout.js'
import { type Span, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { type Draft, SURE_PERCENTS } from '../../state/practice-draft.js'
import { columnsOf } from '../../terminal/fit.js'

interface AnswerParts {
  readonly draft: Draft
  readonly isSure: boolean
  readonly standing: Decision
  readonly bag: readonly BallSpecification[]
  readonly hand: Hand
}

/** An answer being put together. */
export function answerRows(position: Position, parts: AnswerParts, columns: number, theme: Theme): string[] {
  const { draft } = parts
  switch (position.kind) {
    case 'decide':
      return choiceRows(position, parts, columns, theme)
    case 'throw-or-lane':
      return [markedRow([`Delivery ${draft.sharePercent} %, lane ${100 - draft.sharePercent} %`], 0, theme)]
    case 'call':
      return [markedRow([`from ${boardWords(draft.low)}`, `to ${boardWords(draft.high)}`], draft.cursor, theme)]
    case 'read': {
      const { question } = position
      if (question === 'shape' || question === 'length')
        return [
          markedRow(
            FAMILY_NAMES[question].map((name, at) => `${name} ${draft.shares[at]} %`),
            draft.cursor,
            theme,
          ),
        ]
      const { unit } = READ_UNITS[question]
      const ends = unit === ':1' ? [':1', ':1'] : ['', ` ${unit}`]
      return [
        markedRow(
          [`from ${boardWords(draft.low)}${ends[0]}`, `to ${boardWords(draft.high)}${ends[1]}`],
          draft.cursor,
          theme,
        ),
      ]
    }
  }
}

/** Values side by side, the one under the hand between two marks. */
function markedRow(values: readonly string[], cursor: number, theme: Theme): string {
  const { left, right } = theme.glyphs
  const spans: Span[] = values.map((value, at) =>
    at === cursor ? [`${left} ${value} ${right}  `, 'accent'] : [`  ${value}    `, 'plain'],
  )
  return textRow(theme, ...spans)
}

/** Choices one under the other, in two columns where all fit so; then how sure. */
function choiceRows(
  position: Extract<Position, { kind: 'decide' }>,
  parts: AnswerParts,
  columns: number,
  theme: Theme,
): string[] {
  const { draft, isSure, standing, bag, hand } = parts
  const words = position.answers.map(({ decision }) =>
    offeredWords(decision, standing, bag, hand, position.skill === 'spare'),
  )
  const labels = words.map((text, place) => {
    const mark = place === draft.cursor ? theme.glyphs.pointer : ' '
    const row = textRow(theme, [`${mark} ${text}`, place === draft.cursor ? 'accent' : isSure ? 'faint' : 'plain'])
    return clickable(row, { kind: 'entry', place })
  })
  const half = Math.floor(columns / 2)
  const isNarrow = words.every((text) => columnsOf(text) + 3 <= half)
  const rows = Math.ceil(labels.length / 2)
  const list = isNarrow ? beside(labels.slice(0, rows), half, labels.slice(rows)) : labels
  if (!isSure) return list
  const { left, right } = theme.glyphs
  const sure: Span[] = SURE_PERCENTS.map((percent) =>
    percent === draft.surePercent ? [`${left}${percent} %${right} `, 'accent'] : [` ${percent} %  `, 'plain'],
  )
  return [...list, textRow(theme, ['How sure are you that it costs next to nothing?  ', 'strong'], ...sure)]
}
