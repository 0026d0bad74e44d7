import type { PastBlock } from '../../../scenarios/store/past-blocks.js'
import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { filterSpans } from '../../parts/filter-line.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { menuRows } from '../../parts/menu.js'
import type { Played, ScreenOf } from '../../state/app-state.js'
import { playedOf } from '../../state/played.js'
import { listedBlocks } from '../../state/reduce-menus.js'
import { wrapWords } from '../../terminal/fit.js'

const ROWS_AROUND_LIST = 8
const TITLE_COLUMNS = 37
const SCORE_COLUMNS = 13

/** Blocks bowled before, latest first. */
export function pastScreen(
  { cursor, blocks, opening, filter }: ScreenOf<'past'>,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const rows = size.rows - 1 - ROWS_AROUND_LIST
  const listed = listedBlocks(blocks, filter)
  const first = Math.max(0, Math.min(cursor - Math.floor(rows / 2), listed.length - rows))
  const shown = listed.slice(first, first + rows)
  const best = playedOf(blocks ?? [])
  const body = [
    '',
    textRow(
      theme,
      [' Past blocks', 'strong'],
      [filter ? '' : `  latest first; ${theme.glyphs.played} is the best game on its lane`, 'faint'],
      ...filterSpans(filter, theme),
    ),
    '',
    ...(blocks === null || listed.length === 0
      ? emptyRows(blocks, theme)
      : menuRows(
          shown.map((block) => blockWords(block, isBest(block, best), theme)),
          cursor - first,
          theme,
          first,
        ).map((row) => ` ${row}`)),
    '',
    ...(opening === null
      ? wrapWords(notice, size.columns - 2).map((row) => textRow(theme, [` ${row}`, 'loss']))
      : [textRow(theme, [` Playing it again${theme.glyphs.ellipsis}`, 'faint'])]),
  ]
  return page(body, contextKeyLine(filter?.isOpen ? 'filter' : 'past', size.columns, theme), size)
}

function emptyRows(blocks: readonly PastBlock[] | null, theme: Theme): string[] {
  if (blocks === null) return [textRow(theme, [` Reading${theme.glyphs.ellipsis}`, 'faint'])]
  const why = blocks.length === 0 ? 'No record here tells of a block.' : 'No block has all of these words.'
  return [textRow(theme, [` ${why}`, 'faint'])]
}

/** Whether one of its games is the best of all on its lane; a lane played once has nothing to compare. */
function isBest({ title, games }: PastBlock, best: ReadonlyMap<string, Played>): boolean {
  const played = best.get(title)
  return played !== undefined && played.blocks > 1 && games.some((game) => game === played.bestGame)
}

const KIND_WORDS = { drill: 'drill', 'short-block': 'short block' } as const

function blockWords({ bowledAt, title, games, throws, kind }: PastBlock, best: boolean, theme: Theme): string {
  const day = bowledAt.toISOString().slice(0, 10)
  const name = [...title].slice(0, TITLE_COLUMNS).join('').padEnd(TITLE_COLUMNS)
  const scores = games.map((score) => String(score).padStart(3)).join(', ')
  // What answers a drill has no score of its own.
  const score = kind !== 'block' ? KIND_WORDS[kind] : games.length === 0 ? 'practice only' : scores
  const mark = best && kind === 'block' ? theme.glyphs.played : ' '
  return `${day}  ${name} ${mark} ${score.padEnd(SCORE_COLUMNS)}  ${String(throws).padStart(2)} ${throws === 1 ? 'throw' : 'throws'}`
}
