import { sameLuckLine } from '../../scenarios/words/same-luck-words.js'
import { sameLuckScores } from '../../sim/analysis/explore/same-luck.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import type { Compared } from '../state/app-state.js'
import { isComparedWith } from '../state/compared.js'
import { blockOf, type PlayState } from '../state/play-state.js'

/** From this width on the line says everything in full. */
const WHOLE_COLUMNS = 118

/** What others score on the block's luck, or how far that has come; one row. */
export function sameLuckRow(play: PlayState, compared: Compared | null, columns: number, theme: Theme): string {
  const block = blockOf(play)
  const mine = compared && isComparedWith(compared, block) ? compared : null
  if (!mine?.comparison) {
    const share = mine ? ` ${Math.floor(100 * mine.share)} %` : ''
    return textRow(theme, [`Same luck: what others score is being worked out${theme.glyphs.ellipsis}${share}`, 'faint'])
  }
  const scores = sameLuckScores(block, mine.comparison)
  if (!scores) return textRow(theme, ['Same luck: no frame is finished yet.', 'faint'])
  return textRow(theme, [sameLuckLine(scores, columns >= WHOLE_COLUMNS ? 'whole' : 'short'), 'strong'])
}

/** The seed a block can be asked for by, and how. */
export const seedRow = (play: PlayState, theme: Theme): string =>
  textRow(theme, [`Seed ${blockOf(play).seed}`, 'plain'], ['  a: same luck again, o: same lane, other luck', 'faint'])
