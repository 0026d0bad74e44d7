import { beliefSentences } from '../../scenarios/words/belief-words.js'
import type { BeliefSummary, Reading } from '../../sim/analysis/belief/summary.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { wrapWords } from '../terminal/fit.js'

const SURE_SHARE = 0.995
/** A longer line of words is hard to read. */
const MOST_COLUMNS = 110

/** How sure anyone could be of the fresh pattern before a choice, from what had been shown. */
export function beliefRows(
  belief: BeliefSummary | null,
  columns: number,
  theme: Theme,
  when = 'before this choice',
): string[] {
  return [
    textRow(theme, ['How well the fresh oil could be read', 'strong'], [`, ${when}`, 'faint']),
    ...(belief
      ? wrapWords(beliefSentences(belief).join(' '), Math.min(MOST_COLUMNS, columns))
      : [textRow(theme, [`Working it out${theme.glyphs.ellipsis}`, 'faint'])]),
  ]
}

/** The same in a few words: length, volume and shape. */
export function beliefWords({
  lengthFeet,
  volumeMillilitres,
  shape,
}: BeliefSummary): readonly [string, string, string] {
  const [share, word] = (
    [
      [shape.flat, 'flat'],
      [shape.between, 'between flat and house-like'],
      [shape.houseLike, 'house-like'],
    ] as const
  ).reduce((best, one) => (one[0] > best[0] ? one : best))
  return [
    `${range(lengthFeet, (feet) => String(Math.round(feet * 2) / 2))} ft`,
    `${range(volumeMillilitres, (millilitres) => millilitres.toFixed(0))} mL`,
    share > SURE_SHARE ? word : `${word} ${Math.round(share * 100)} %`,
  ]
}

function range({ low, high }: Reading, told: (value: number) => string): string {
  const [from, to] = [told(low), told(high)]
  return from === to ? from : `${from} to ${to}`
}
