import type { BeliefSummary } from '../../sim/belief/summary.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { wrapWords } from '../terminal/fit.js'

/** How sure anyone could be of the fresh pattern before a choice, from what had been shown. */
export function beliefRows(belief: BeliefSummary | null, columns: number, theme: Theme): string[] {
  return [
    textRow(theme, ['How sure one could be of the fresh oil', 'strong'], [', before this choice', 'faint']),
    ...(belief
      ? belief.sentences.flatMap((sentence) => wrapWords(sentence, columns))
      : [textRow(theme, [`Working it out${theme.glyphs.ellipsis}`, 'faint'])]),
  ]
}
