import type { PastBlock } from '../../../scenarios/store/past-blocks.js'
import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { menuRows } from '../../parts/menu.js'
import type { ScreenOf } from '../../state/app-state.js'
import { wrapWords } from '../../terminal/fit.js'

const ROWS_AROUND_LIST = 8
const TITLE_COLUMNS = 40

/** Blocks bowled before, latest first. */
export function pastScreen(
  { cursor, blocks, opening }: ScreenOf<'past'>,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const rows = size.rows - 1 - ROWS_AROUND_LIST
  const first = Math.max(0, Math.min(cursor - Math.floor(rows / 2), (blocks?.length ?? 0) - rows))
  const shown = (blocks ?? []).slice(first, first + rows)
  const body = [
    '',
    textRow(
      theme,
      [' Past blocks', 'strong'],
      ['  latest first; each is played again and opens in the debrief', 'faint'],
    ),
    '',
    ...listRows(blocks, shown, cursor - first, theme),
    '',
    ...(opening === null
      ? wrapWords(notice, size.columns - 2).map((row) => textRow(theme, [` ${row}`, 'loss']))
      : [textRow(theme, [` Playing it again${theme.glyphs.ellipsis}`, 'faint'])]),
  ]
  return page(body, contextKeyLine('past', size.columns, theme), size)
}

function listRows(
  blocks: readonly PastBlock[] | null,
  shown: readonly PastBlock[],
  chosen: number,
  theme: Theme,
): string[] {
  if (blocks === null) return [textRow(theme, [` Reading${theme.glyphs.ellipsis}`, 'faint'])]
  if (blocks.length === 0) return [textRow(theme, [' No record here tells of a block.', 'faint'])]
  return menuRows(shown.map(blockWords), chosen, theme).map((row) => ` ${row}`)
}

function blockWords({ bowledAt, title, games, throws }: PastBlock): string {
  const day = bowledAt.toISOString().slice(0, 10)
  const name = [...title].slice(0, TITLE_COLUMNS).join('').padEnd(TITLE_COLUMNS)
  const score = games.length === 0 ? 'practice only' : games.join(', ')
  return `${day}  ${name}  ${score.padEnd(12)}  ${throws === 1 ? '1 throw' : `${throws} throws`}`
}
