import {
  CHOICES_ALONE_ABOUT,
  COMPARED_WORDS,
  LANE_OF_THE_DAY_ABOUT,
  SAME_LUCK_ABOUT,
} from '../../../scenarios/words/same-luck-words.js'
import {
  COMPARED_POLICIES,
  type Comparison,
  type SameLuckScores,
  sameLuckScores,
} from '../../../sim/analysis/explore/same-luck.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { rivalTotalWords } from '../../parts/rival-row.js'
import { sameLuckRow, seedRow } from '../../parts/same-luck.js'
import type { Compared } from '../../state/app-state.js'
import { isComparedWith } from '../../state/compared.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

const SCORE_END = 38
const AGAINST_END = 52
const CHOICES_END = 68
const BAR_START = 72
const LEAST_BAR_COLUMNS = 10
const MOST_BAR_COLUMNS = 40
const MOST_SCORE = 300

/** The block beside what others score on the same lane with the same luck, and how to bowl it again. */
export function sameLuckRows(play: PlayState, compared: Compared | null, columns: number, theme: Theme): string[] {
  const width = Math.min(columns, 110)
  const block = blockOf(play)
  const comparison = compared && isComparedWith(compared, block) ? compared.comparison : null
  const scores = comparison && sameLuckScores(block, comparison)
  const rival = rivalTotalWords(play)
  const faint = (words: string) => wrapWords(words, width).map((row) => textRow(theme, [row, 'faint']))
  return [
    textRow(theme, ['On the same lane with the same luck', 'strong']),
    '',
    ...(scores && comparison
      ? tableRows({ scores, lost: lostPins(play, comparison), games: block.setup.games }, columns, theme)
      : [sameLuckRow(play, compared, columns, theme)]),
    '',
    ...faint(SAME_LUCK_ABOUT),
    ...(scores?.isWhole ? faint(CHOICES_ALONE_ABOUT) : []),
    ...(rival === '' ? [] : ['', ...wrapWords(rival, width).map((row) => textRow(theme, [row, 'accent']))]),
    ...(play.rival?.kind === 'guest' ? faint("g: the other player's block") : []),
    '',
    seedRow(play, theme),
    ...(block.seed.startsWith('day-') ? faint(`A lane of the day. ${LANE_OF_THE_DAY_ABOUT}`) : []),
  ]
}

interface Table {
  readonly scores: SameLuckScores
  /** What choices alone lost: the player's first, null while it is not worked out, then the others'. */
  readonly lost: readonly (number | null)[]
  readonly games: number
}

function lostPins(play: PlayState, comparison: Comparison): (number | null)[] {
  const own = play.account?.throws.reduce((sum, { graded }) => sum + Math.max(0, graded?.knownLostPins ?? 0), 0)
  return [own ?? null, ...COMPARED_POLICIES.map((policy) => comparison[policy].lostPins)]
}

/** Everybody's score, what it is against the player's, and bars where there is room for them. */
function tableRows({ scores, lost, games }: Table, columns: number, theme: Theme): string[] {
  const { you, others, frames, isWhole } = scores
  const entries = [
    ['you', you] as const,
    ...COMPARED_POLICIES.map((policy) => [COMPARED_WORDS[policy][0], others[policy]] as const),
  ]
  const canvas = newCanvas(columns, entries.length + 1)
  const heading = isWhole ? (games > 1 ? `${games} games` : 'score') : `${frames} frames`
  putRight(canvas, SCORE_END, 0, heading, 'faint')
  putRight(canvas, AGAINST_END, 0, 'against you', 'faint')
  // What choices lose in a whole block is no measure for a part of one.
  if (isWhole) putRight(canvas, CHOICES_END, 0, 'choices alone', 'faint')
  const barColumns = Math.min(MOST_BAR_COLUMNS, columns - BAR_START)
  if (barColumns >= LEAST_BAR_COLUMNS) put(canvas, BAR_START, 0, heading, 'faint')
  entries.forEach(([name, score], index) => {
    const isYou = index === 0
    const y = index + 1
    put(canvas, 2, y, name, isYou ? 'accent' : 'plain')
    putRight(canvas, SCORE_END, y, String(score), isYou ? 'accent' : 'plain')
    if (!isYou) putRight(canvas, AGAINST_END, y, signed(score - you), 'plain')
    if (isWhole) putRight(canvas, CHOICES_END, y, lostWords(lost[index] ?? null, theme), 'plain')
    if (barColumns < LEAST_BAR_COLUMNS) return
    const length = Math.round((score / (MOST_SCORE * games)) * barColumns)
    put(canvas, BAR_START, y, theme.glyphs.block.repeat(length), isYou ? 'accent' : 'faint')
  })
  return canvasRows(canvas, theme)
}

const lostWords = (pins: number | null, { glyphs }: Theme): string =>
  pins === null ? glyphs.ellipsis : pins.toFixed(1)
const signed = (pins: number): string => (pins > 0 ? `+${pins}` : String(pins))
