import { lineWords } from '../../../scenarios/words/throw-words.js'
import { costWords } from '../../../scenarios/words/words.js'
import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import type { DrillAnswered, DrillPlay } from '../../state/drill-types.js'
import { pinsGiven } from '../../state/play-state.js'
import { clipRow, fitRow, wrapWords } from '../../terminal/fit.js'

const ROWS_AROUND = 8
const PLACE_COLUMNS = 4

/** What a drill came to: each position with the choice made, what it cost and, where it cost anything, what was best. */
export function drillOverScreen({ drill, answered }: DrillPlay, notice: string, size: Size, theme: Theme): string[] {
  const throws = answered.flatMap((one) => one.throws)
  const priced = throws.filter(({ grade }) => grade && grade.kind !== 'practice')
  const pins = priced.reduce((sum, { grade }) => sum + pinsGiven(grade), 0)
  const good = priced.filter(({ grade }) => pinsGiven(grade) === 0).length
  const count = priced.length === 1 ? '1 choice' : `${priced.length} choices`
  const sum =
    priced.length === 0
      ? 'Nothing in it was priced.'
      : `${count}, ${good} as good as the best: cost ${pins.toFixed(1)} pins in all.`
  const rows = answered.flatMap((one, place) => positionRows(one, place, size.columns - 4, theme))
  const room = size.rows - ROWS_AROUND
  const shown = rows.length <= room ? rows : [...rows.slice(0, room - 1), ` ${theme.glyphs.ellipsis}`]
  return page(
    [
      '',
      textRow(theme, [` ${drill.title}`, 'strong'], ['  the drill is over', 'faint']),
      '',
      ...shown,
      '',
      textRow(theme, [` ${sum}`, 'strong']),
      ...wrapWords(notice, size.columns - 2).map((row) => textRow(theme, [` ${row}`, 'loss'])),
    ].map((row) => clipRow(row, size.columns)),
    contextKeyLine('drill-over', size.columns, theme),
    size,
  )
}

function positionRows({ position, throws }: DrillAnswered, place: number, columns: number, theme: Theme): string[] {
  const { bag } = position.state.setup
  return throws.flatMap(({ decision, grade }, index) => {
    const isPriced = grade && grade.kind !== 'practice'
    const cost = isPriced ? costWords(pinsGiven(grade)) : 'Practice costs nothing'
    const head = (index === 0 ? `${place + 1}.` : '').padEnd(PLACE_COLUMNS)
    const line = fitRow(textRow(theme, ` ${head}${lineWords(decision, bag)}`), columns - cost.length)
    const best = isPriced && pinsGiven(grade) > 0 ? [lineWords(grade.best, bag)] : []
    return [
      line + textRow(theme, [` ${cost}`, pinsGiven(grade) > 0 ? 'loss' : 'gain']),
      ...best.map((row) => textRow(theme, [` ${' '.repeat(PLACE_COLUMNS)}best: ${row}`, 'faint'])),
    ]
  })
}
