import { clickable } from '../../draw/hits.js'
import { beside, indent, page, type Size } from '../../draw/layout.js'
import { type Span, spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { pinsWords, throwLabel } from '../../draw/words.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import type { Compared } from '../../state/app-state.js'
import { DEBRIEF_VIEWS, type DebriefState, type DebriefView } from '../../state/debrief-state.js'
import { allPinsGiven, blockOf, isWeighed, type PlayState, pinsGiven } from '../../state/play-state.js'
import { columnsOf } from '../../terminal/fit.js'
import { callScoreRows } from './calls.js'
import { choiceRows } from './choices.js'
import { factRows } from './debrief-facts.js'
import { debriefLane, debriefLegend } from './debrief-lane.js'
import { findingRows } from './findings.js'
import { knownRows } from './known.js'
import { ledgerRows } from './ledger.js'
import { sameLuckRows } from './same-luck.js'
import { timelineRows } from './value-chart.js'

const LANE_FRAME_ROWS = 3
/** Head, tabs, legend, labels of the timeline, six rows of facts, keys. */
const WORD_ROWS = 11
/** Head, tabs, legend, keys. */
const ROWS_AROUND_VIEW = 4
const LEAST_LANE_ROWS = 9
/** The same where a status line of the terminal's own takes rows away; facts are worth more than a tall lane. */
const SMALL_LANE_ROWS = 7
const ALL_ROWS = 24
/** From this width on the head has room for everything. */
const LONG_COLUMNS = 100
/** From this width on the other choices stand beside the facts, which then keep to their own columns. */
const WIDE_COLUMNS = 150
const FACT_COLUMNS = 78
/** From this height on the findings fit below the ledger, and from the next the lane of the chosen throw above both. */
const TALL_ROWS = 36
const TALLEST_ROWS = 50
/** Left for ledger and findings, with what frames the lane. */
const ROWS_BELOW_LANE = 36
/** Room of the ledger where the findings stand beside it. */
const LEDGER_COLUMNS = 78

const VIEW_TITLES: Readonly<Record<DebriefView, string>> = {
  throw: 'Throw',
  choices: 'Other choices',
  ledger: 'Ledger',
  findings: 'Findings',
  calls: 'Calls',
  known: 'The read',
  luck: 'Same luck',
}

/** The oil shown: where this throw went and why, what else could have been chosen, and what the block came to. */
export function debriefScreen(
  play: PlayState,
  debrief: DebriefState,
  notice: string,
  size: Size,
  theme: Theme,
  compared: Compared | null = null,
): string[] {
  const head = [headRow(play, size.columns, theme), tabRow(debrief.view, theme)]
  const foot = notice === '' ? contextKeyLine('debrief', size.columns, theme) : textRow(theme, [` ${notice}`, 'loss'])
  if (debrief.view === 'luck') {
    return page([...head, '', ...indent(sameLuckRows(play, compared, size.columns - 3, theme), 1)], foot, size)
  }
  const isWhole = debrief.view === 'ledger' || debrief.view === 'findings' || debrief.view === 'calls'
  const body = isWhole
    ? wholeRows(play, debrief, size, theme)
    : debrief.view === 'throw'
      ? throwRows(play, debrief, size, theme)
      : aboutThrowRows(play, debrief, size, theme)
  return page([...head, ...body], foot, size)
}

function headRow(play: PlayState, columns: number, theme: Theme): string {
  const open = play.grades.filter((_, index) => !isWeighed(play, index)).length
  const still = open > 0 ? ` (${open} still to be weighed)` : ''
  const isLong = columns >= LONG_COLUMNS
  const title = isLong ? ` ${theme.glyphs.separator} ${play.scenario.title}` : ''
  return spreadRow(
    textRow(theme, [' Oil shown', 'strong'], [title, 'faint']),
    textRow(theme, ['Cost of your choices: ', 'faint'], [`${pinsWords(allPinsGiven(play))}${still} `, 'loss']),
    columns,
  )
}

function tabRow(view: DebriefView, theme: Theme): string {
  const { left, right } = theme.glyphs
  const tabs = DEBRIEF_VIEWS.map((one, place) => {
    const title = VIEW_TITLES[one]
    const row = textRow(theme, one === view ? [`${left}${title}${right} `, 'accent'] : [` ${title}  `, 'faint'])
    return clickable(row, { kind: 'tab', place })
  })
  return ` ${tabs.join('')}`
}

/** The lane with everything about one throw below it. */
function throwRows(play: PlayState, debrief: DebriefState, size: Size, theme: Theme): string[] {
  const isWide = size.columns >= WIDE_COLUMNS
  const columns = isWide ? FACT_COLUMNS : Math.min(110, size.columns - 2)
  const spare = size.rows - WORD_ROWS - LANE_FRAME_ROWS
  const least = size.rows < ALL_ROWS ? SMALL_LANE_ROWS : LEAST_LANE_ROWS
  const laneRows = Math.min(26, Math.max(least, spare - 4))
  const barRows = Math.max(1, Math.min(6, spare - laneRows))
  const air = spare - laneRows - barRows >= 2 ? [''] : []
  const timeline = timelineRows(gradesOf(play), debrief.chosen, columns, barRows, theme)
  const facts = factRows(play, debrief.chosen, columns, theme)
  const told = play.tour === null ? facts : [...facts.slice(0, -TOUR_WORDS.length), ...tourRows(theme)]
  const below = indent([...air, ...timeline, ...air, ...told], 1)
  const besideRows = isWide ? choiceRows(play, debrief.chosen, size.columns - columns - 6, below.length, theme) : []
  const chart = [` ${theme.glyphs.bar[3]}`, 'loss'] as const
  const lane = laneAndLegend(play, debrief, laneRows, size, theme, [chart, [' cost', 'faint']])
  return [...lane, ...beside(below, columns + 4, besideRows)]
}

/** What the guided first frame ends with. */
const TOUR_WORDS = [
  'You are graded against the best from what you had seen, and nothing else.',
  'Tab shows more: other choices, where the pins went. Esc goes home.',
]

const tourRows = (theme: Theme): string[] => TOUR_WORDS.map((words) => textRow(theme, [words, 'accent']))

function laneAndLegend(
  play: PlayState,
  debrief: DebriefState,
  rows: number,
  size: Size,
  theme: Theme,
  further: readonly Span[] = [],
): string[] {
  const picture = lanePicture(debriefLane(play, debrief), Math.min(150, size.columns - 1), rows, theme)
  const legend = ` ${debriefLegend(play, debrief, size.columns, theme)}`
  const more = `${textRow(theme, ...further)} `
  const fits = columnsOf(legend) + columnsOf(more) + 1 <= size.columns
  return [...picture, fits ? spreadRow(legend, more, size.columns) : legend]
}

const gradesOf = (play: PlayState) =>
  blockOf(play).throws.map((record, index) => ({
    label: throwLabel(record.spot),
    pins: isWeighed(play, index) ? pinsGiven(play.grades[index]) : null,
  }))

/** The lane with one table about the throw below it. */
function aboutThrowRows(play: PlayState, debrief: DebriefState, size: Size, theme: Theme): string[] {
  const columns = Math.min(110, size.columns - 2)
  const spare = size.rows - ROWS_AROUND_VIEW - LANE_FRAME_ROWS
  const laneRows = Math.min(26, Math.max(LEAST_LANE_ROWS, spare - 16))
  const rows = spare - laneRows
  const table =
    debrief.view === 'choices'
      ? [
          factRows(play, debrief.chosen, columns, theme)[0]!,
          ...choiceRows(play, debrief.chosen, columns, rows - 1, theme),
        ]
      : knownRows(play, debrief.chosen, columns, theme)
  return [...laneAndLegend(play, debrief, laneRows, size, theme), ...indent(table.slice(0, rows), 1)]
}

/** A page about the whole block, scrolled where it is longer than the screen. */
function wholeRows(play: PlayState, debrief: DebriefState, size: Size, theme: Theme): string[] {
  const { account } = play
  const isWide = size.columns >= WIDE_COLUMNS && debrief.view !== 'calls'
  const columns = isWide ? LEDGER_COLUMNS : size.columns - 3
  if (!account) {
    const done = `${play.accounts.length} of ${play.grades.length}`
    return ['', textRow(theme, [` Working out the account: ${done} throws. Tab goes on meanwhile.`, 'faint'])]
  }
  const { spot } = blockOf(play).throws[debrief.chosen]!
  const ledger = () => ledgerRows(account, spot, columns, theme)
  const findings = (room: number) => findingRows(play, account, room, theme)
  const rows = isWide
    ? beside(ledger(), columns + 4, findings(size.columns - columns - 8))
    : debrief.view === 'ledger'
      ? size.rows >= TALL_ROWS
        ? [...ledger(), '', ...findings(columns)]
        : ledger()
      : debrief.view === 'findings'
        ? findings(columns)
        : callScoreRows(play, debrief.chosen, columns, theme)
  const laneRows = isWide && size.rows >= TALLEST_ROWS ? size.rows - ROWS_BELOW_LANE : 0
  const lane = laneRows > 0 ? laneAndLegend(play, debrief, laneRows, size, theme) : []
  const room = size.rows - 1 - 3 - lane.length
  const first = Math.min(debrief.scroll, Math.max(0, rows.length - room))
  const isCut = first + room < rows.length
  const shown = indent(rows.slice(first, isCut ? first + room - 1 : first + room), 1)
  return [...lane, '', ...shown, ...(isCut ? [textRow(theme, [` ${theme.glyphs.ellipsis} more below`, 'faint'])] : [])]
}
