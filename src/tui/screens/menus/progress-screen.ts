import { shortBlockWords } from '../../../scenarios/reports/progress/progress-lines.js'
import type { ProgressReport } from '../../../scenarios/reports/progress/progress-report.js'
import { calibrationLine } from '../../../scenarios/words/practice-session-words.js'
import { counted } from '../../../scenarios/words/words.js'
import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import type { ScreenOf } from '../../state/app-state.js'
import { clipRow, fitRow, wrapWords } from '../../terminal/fit.js'

/** Head, the row below it and the keys. */
const ROWS_AROUND = 4
const NAME_COLUMNS = 20
const FIGURE_COLUMNS = 20
const STRETCH_COLUMNS = 10
const BAR_COLUMNS = 24
const MOST_TITLE_COLUMNS = 48

/** What choices cost over time, by skill; scrolled where it is longer than the screen. */
export function progressScreen(
  { report, scroll }: ScreenOf<'progress'>,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const rows =
    report === null
      ? [textRow(theme, [` Reading${theme.glyphs.ellipsis}`, 'faint'])]
      : progressRows(report, size.columns, theme)
  const room = size.rows - ROWS_AROUND - (notice === '' ? 0 : 1)
  const first = Math.max(0, Math.min(scroll, rows.length - room))
  const below = rows.length - room - first
  return page(
    [
      '',
      textRow(
        theme,
        [' Progress', 'strong'],
        ['  cost in pins a game, with 95 % intervals', 'faint'],
        [below > 0 ? `  ${below} more ${below === 1 ? 'row' : 'rows'} below` : '', 'faint'],
      ),
      '',
      ...rows.slice(first, first + room),
      ...(notice === '' ? [] : [textRow(theme, [` ${notice}`, 'loss'])]),
    ].map((row) => clipRow(row, size.columns)),
    contextKeyLine('progress', size.columns, theme),
    size,
  )
}

/** All rows, as many as there are. */
function progressRows(report: ProgressReport, columns: number, theme: Theme): string[] {
  const { blocks, choices, unpriced, first, last, cost } = report
  if (blocks === 0) {
    const words = 'No block here has a choice with a price yet. Play one and look back on it, and it is counted here.'
    return [
      ...wrapWords(words, columns - 2).map((row) => textRow(theme, [` ${row}`, 'faint'])),
      ...unpricedRows(unpriced, theme),
      ...practiceRows(report, columns, theme),
    ]
  }
  const when = first === null ? '' : first === last ? `, ${first}` : `, ${first} to ${last}`
  return [
    textRow(theme, ` ${counted(blocks, 'block')}, ${counted(choices, 'choice')}${when}: `, [figure(cost), 'strong']),
    ...unpricedRows(unpriced, theme),
    '',
    ...skillRows(report, columns, theme),
    '',
    ...stretchRows(report, columns, theme),
    ...callRows(report, theme),
    ...drillRows(report, theme),
    ...shortBlockRows(report, columns, theme),
    ...practiceRows(report, columns, theme),
    '',
    ...laneRows(report, columns, theme),
  ]
}

function unpricedRows(unpriced: number, theme: Theme): string[] {
  if (unpriced === 0) return []
  return [
    textRow(theme, [
      ` ${counted(unpriced, 'block')} not priced yet: look back on them, or run dryboard progress.`,
      'faint',
    ]),
  ]
}

const figure = ({
  mean,
  low,
  high,
}: {
  readonly mean: number
  readonly low: number | null
  readonly high: number | null
}): string =>
  low === null || high === null ? mean.toFixed(1) : `${mean.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`

/** Skills that cost anything, dearest first, each with a bar. */
function skillRows({ skills }: ProgressReport, columns: number, theme: Theme): string[] {
  const told = skills.filter(({ mean }) => mean > 0)
  const most = Math.max(0.5, ...told.map(({ mean }) => mean))
  const bars = Math.min(BAR_COLUMNS, columns - NAME_COLUMNS - FIGURE_COLUMNS - 4)
  const quiet = skills.filter(({ mean }) => mean === 0).map(({ skill }) => skill)
  return [
    textRow(theme, [' By skill', 'strong']),
    ...told.map(({ skill, ...estimate }) =>
      textRow(theme, ` ${skill.padEnd(NAME_COLUMNS)}${figure(estimate).padEnd(FIGURE_COLUMNS)} `, [
        theme.glyphs.dot.repeat(Math.max(1, Math.round((bars * estimate.mean) / most))),
        'loss',
      ]),
    ),
    ...(quiet.length > 0
      ? wrapWords(`No finding on ${quiet.join(', ')}.`, columns - 2).map((row) => textRow(theme, [` ${row}`, 'faint']))
      : []),
  ]
}

/** The latest stretches of time that fit side by side: all choices, and the dearest skills. */
function stretchRows({ stretches, skills }: ProgressReport, columns: number, theme: Theme): string[] {
  const fitting = Math.max(1, Math.floor((columns - NAME_COLUMNS - 2) / STRETCH_COLUMNS))
  const shown = stretches.slice(-fitting)
  const row = (name: string, cells: readonly string[]): string =>
    ` ${name.padEnd(NAME_COLUMNS)}${cells.map((cell) => cell.padStart(STRETCH_COLUMNS)).join('')}`
  const told = skills.filter(({ mean }) => mean > 0).map(({ skill }) => skill)
  return [
    textRow(theme, [
      row(
        'Over time',
        shown.map(({ name }) => name),
      ),
      'strong',
    ]),
    textRow(theme, [
      row(
        'blocks',
        shown.map(({ blocks }) => String(blocks)),
      ),
      'faint',
    ]),
    row(
      'all',
      shown.map(({ cost }) => cost.mean.toFixed(1)),
    ),
    ...told.map((skill) =>
      row(
        skill,
        shown.map((one) => (one.skills.find((own) => own.skill === skill)?.mean ?? 0).toFixed(1)),
      ),
    ),
  ]
}

function callRows({ calibration }: ProgressReport, theme: Theme): string[] {
  if (!calibration) return []
  const { count, right, claimed, byConfidence } = calibration
  return [
    '',
    textRow(theme, [' Calls', 'strong'], `  ${right} of ${count} came right; you said ${claimed.toFixed(1)} would`),
    ...byConfidence.map(
      (one) => ` ${`${Math.round(one.sureShare * 100)} % sure`.padEnd(NAME_COLUMNS)}${one.right} of ${one.count}`,
    ),
  ]
}

function drillRows({ drills }: ProgressReport, theme: Theme): string[] {
  if (drills.positions === 0) return []
  const { positions, choices, asGoodAsTheBest, costPins } = drills
  const words = `${counted(positions, 'position')}; ${asGoodAsTheBest} of ${choices} as good as the best, cost ${costPins.toFixed(1)} pins`
  return ['', textRow(theme, [' Drills', 'strong'], `  ${words}`)]
}

function shortBlockRows({ shortBlocks }: ProgressReport, columns: number, theme: Theme): string[] {
  if (shortBlocks.blocks === 0) return []
  return [
    '',
    textRow(theme, [' Carried over', 'strong']),
    ...wrapWords(shortBlockWords(shortBlocks), columns - 2).map((row) => ` ${row}`),
  ]
}

/** What practice says of each skill, and how far confidence held. */
function practiceRows({ practice }: ProgressReport, columns: number, theme: Theme): string[] {
  if (!practice || practice.skills.length === 0) return []
  return [
    '',
    textRow(theme, [' Practice', 'strong'], ['  pins a game, four cases in five; answers', 'faint']),
    ...practice.skills.map(
      ({ skill, answers, ...estimate }) =>
        ` ${skill.padEnd(NAME_COLUMNS)}${figure(estimate).padEnd(FIGURE_COLUMNS)}${String(answers).padStart(5)}`,
    ),
    ...wrapWords(calibrationLine(practice.calibration), columns - 2).flatMap((row) => (row === '' ? [] : [` ${row}`])),
  ]
}

function laneRows({ lanes }: ProgressReport, columns: number, theme: Theme): string[] {
  const name = Math.min(MOST_TITLE_COLUMNS, Math.max(NAME_COLUMNS, columns - FIGURE_COLUMNS - 24))
  return [
    textRow(theme, [` ${'Lanes met'.padEnd(name)}`, 'strong'], ['blocks  best  cost a game', 'faint']),
    ...lanes.map(({ title, blocks, bestGame, cost }) => {
      const best = bestGame === null ? '-' : String(bestGame)
      const named = fitRow(clipRow(textRow(theme, ` ${title}`), name), name + 1)
      return `${named}${String(blocks).padStart(6)}${best.padStart(6)}  ${figure(cost)}`
    }),
  ]
}
