import { fellWords, seenParts } from '../../../scenarios/words/throw-words.js'
import { pinsWords } from '../../../scenarios/words/words.js'
import { clickable } from '../../draw/hits.js'
import { beside, indent, page, type Size } from '../../draw/layout.js'
import { type Span, spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { throwLabel } from '../../draw/words.js'
import { beliefWords } from '../../parts/belief.js'
import { contextKeyLine, type KeyWords } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import { laneSize } from '../../parts/lane-size.js'
import type { Compared } from '../../state/app-state.js'
import { DEBRIEF_VIEWS, type DebriefState, type DebriefView } from '../../state/debrief-state.js'
import { allPinsGiven, blockOf, isWeighed, type PlayState, pinsGiven } from '../../state/play-state.js'
import { columnsOf, wrapWords } from '../../terminal/fit.js'
import { callScoreRows } from './calls.js'
import { choiceRows } from './choices.js'
import { factRows } from './debrief-facts.js'
import { debriefLane, debriefLegend } from './debrief-lane.js'
import { findingPage } from './findings.js'
import { knownRows } from './known.js'
import { ledgerRows } from './ledger.js'
import { sameLuckRows } from './same-luck.js'
import { timelineRows } from './value-chart.js'

/** Head, lane's frame, legend, keys. */
const ROWS_AROUND_LANE = 6
/** Labels of the timeline and six rows of facts. */
const WORD_ROWS = 7
/** Less is no bar. */
const LEAST_BAR_ROWS = 1
const MOST_BAR_ROWS = 6
/** From this width on the head has room for everything. */
const LONG_COLUMNS = 126
/** And from this one on for the views' whole titles. */
const TITLE_COLUMNS = 100
/** From this width on the other choices stand beside the facts, which then keep to their own columns. */
const WIDE_COLUMNS = 150
const FACT_COLUMNS = 78
const SIDE_GAP_COLUMNS = 3
/** From this height on the findings fit below the ledger, and from the next the lane of the chosen throw above both. */
const TALL_ROWS = 36
const TALLEST_ROWS = 50
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
/** The same where there is no room for more. */
const SHORT_TITLES: Readonly<Record<DebriefView, string>> = {
  ...VIEW_TITLES,
  choices: 'Choices',
  known: 'Read',
  luck: 'Luck',
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
  const head = [headRow(play, debrief.view, size.columns, theme)]
  const keys = contextKeyLine('debrief', size.columns, theme, keyWords(debrief.view, size))
  const foot = notice === '' ? keys : textRow(theme, [` ${notice}`, 'loss'])
  if (debrief.view === 'luck') {
    return page([...head, '', ...indent(sameLuckRows(play, compared, size.columns - 3, theme), 1)], foot, size)
  }
  const body = isOfBlock(debrief.view)
    ? wholeRows(play, debrief, size, theme)
    : debrief.view === 'throw'
      ? throwRows(play, debrief, size, theme)
      : aboutThrowRows(play, debrief, size, theme)
  return page([...head, ...body], foot, size)
}

/** Pages about the whole block, which may be longer than the screen. */
const isOfBlock = (view: DebriefView): boolean => view === 'ledger' || view === 'findings' || view === 'calls'

/** From this size on the lane of the chosen throw stands above ledger and findings. */
const hasLaneAbove = (view: DebriefView, size: Size): boolean =>
  view !== 'calls' && size.columns >= WIDE_COLUMNS && size.rows >= TALLEST_ROWS

/** Keys with nothing to do on a page are not named there. */
function keyWords(view: DebriefView, size: Size): KeyWords {
  const isLong = isOfBlock(view)
  const hasLane = isLong ? hasLaneAbove(view, size) : view !== 'luck'
  return { ...(hasLane ? {} : { wear: null, roll: null }), ...(isLong ? {} : { down: null }) }
}

/** The views, the one in sight marked, and what the choices cost. */
function headRow(play: PlayState, view: DebriefView, columns: number, theme: Theme): string {
  const isOpen = play.grades.some((_, index) => !isWeighed(play, index))
  const isLong = columns >= LONG_COLUMNS
  const lead = isLong ? textRow(theme, [' Oil shown ', 'strong'], [theme.glyphs.separator, 'faint']) : ''
  const cost = `${pinsWords(allPinsGiven(play))}${isOpen ? ' so far' : ''}`
  const words = isLong ? ['Cost of your choices: ', cost] : ['', isOpen ? cost.replace(/ pins?/, '') : cost]
  return spreadRow(
    lead + tabRow(view, columns >= TITLE_COLUMNS ? VIEW_TITLES : SHORT_TITLES, theme),
    textRow(theme, [isLong ? words[0]! : 'Cost ', 'faint'], [`${words[1]} `, 'loss']),
    columns,
  )
}

function tabRow(view: DebriefView, titles: typeof VIEW_TITLES, theme: Theme): string {
  const { left, right } = theme.glyphs
  const tabs = DEBRIEF_VIEWS.map((one, place) => {
    const title = titles[one]
    const row = textRow(theme, one === view ? [`${left}${title}${right} `, 'accent'] : [` ${title}  `, 'faint'])
    return clickable(row, { kind: 'tab', place })
  })
  return ` ${tabs.join('')}`
}

/** The lane with everything about one throw below it. */
function throwRows(play: PlayState, debrief: DebriefState, size: Size, theme: Theme): string[] {
  const isWide = size.columns >= WIDE_COLUMNS
  const columns = isWide ? FACT_COLUMNS : Math.min(110, size.columns - 2)
  const spare = size.rows - ROWS_AROUND_LANE - laneSize(size).rows - WORD_ROWS
  const barRows = Math.max(LEAST_BAR_ROWS, Math.min(MOST_BAR_ROWS, spare))
  const air = spare - barRows >= 2 ? [''] : []
  const timeline = timelineRows(gradesOf(play), debrief.chosen, columns, barRows, theme)
  const facts = factRows(play, debrief.chosen, columns, theme)
  const told = play.tour === null ? facts : [...facts.slice(0, -TOUR_WORDS.length), ...tourRows(theme)]
  const below = indent([...air, ...timeline, ...air, ...told], 1)
  const besideRows = isWide ? choiceRows(play, debrief.chosen, size.columns - columns - 6, below.length, theme) : []
  const chart = [` ${theme.glyphs.bar[3]}`, 'loss'] as const
  const lane = laneAndLegend(play, debrief, size, theme, [chart, [' cost', 'faint']])
  return [...lane, ...beside(below, columns + 4, besideRows)]
}

/** What the guided first frame ends with. */
const TOUR_WORDS = [
  'You are graded against the best from what you had seen, and nothing else.',
  'Tab shows more: other choices, where the pins went. Esc goes home.',
]

const tourRows = (theme: Theme): string[] => TOUR_WORDS.map((words) => textRow(theme, [words, 'accent']))

/** The lane where the play screen has it, what was seen of the throw beside it where there is room, and the legend. */
function laneAndLegend(
  play: PlayState,
  debrief: DebriefState,
  size: Size,
  theme: Theme,
  further: readonly Span[] = [],
): string[] {
  const { rows, columns, sideColumns } = laneSize(size)
  const picture = lanePicture(debriefLane(play, debrief), columns, rows, theme)
  const side = sideColumns > 0 ? seenRows(play, debrief.chosen, sideColumns - SIDE_GAP_COLUMNS, theme) : []
  const legend = ` ${debriefLegend(play, debrief, size.columns, theme)}`
  const more = `${textRow(theme, ...further)} `
  const fits = columnsOf(legend) + columnsOf(more) + 1 <= size.columns
  return [
    ...beside(picture, columns + SIDE_GAP_COLUMNS, side.slice(0, picture.length)),
    fits ? spreadRow(legend, more, size.columns) : legend,
  ]
}

/** What was seen of a throw, and how sure one could be of the oil before it. */
function seenRows(play: PlayState, index: number, columns: number, theme: Theme): string[] {
  const { throws, setup } = blockOf(play)
  const record = throws[index]!
  const belief = play.accounts[index]?.belief
  const heading = (text: string) => textRow(theme, [text, 'faint'])
  return [
    '',
    heading('You saw'),
    ...seenParts(record, setup.bowler.hand).flatMap((part) => wrapWords(part, columns)),
    ...wrapWords(fellWords(record, setup.bowler.hand), columns),
    ...(belief ? ['', heading('Your read before it, at best'), ...beliefWords(belief)] : []),
  ]
}

const gradesOf = (play: PlayState) =>
  blockOf(play).throws.map((record, index) => ({
    label: throwLabel(record.spot),
    pins: isWeighed(play, index) ? pinsGiven(play.grades[index]) : null,
  }))

/** The lane with one table about the throw below it. */
function aboutThrowRows(play: PlayState, debrief: DebriefState, size: Size, theme: Theme): string[] {
  const columns = Math.min(110, size.columns - 2)
  const rows = size.rows - ROWS_AROUND_LANE - laneSize(size).rows
  const table =
    debrief.view === 'choices'
      ? [
          factRows(play, debrief.chosen, columns, theme)[0]!,
          ...choiceRows(play, debrief.chosen, columns, rows - 1, theme),
        ]
      : knownRows(play, debrief.chosen, columns, theme)
  return [...laneAndLegend(play, debrief, size, theme), ...indent(table.slice(0, rows), 1)]
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
  const pointed = debrief.view === 'findings' ? debrief.finding : null
  const room = isWide ? size.columns - columns - 8 : columns
  const findings = findingPage(play, account, pointed, room, theme)
  const pointedRow = pointed === null || pointed === 0 ? 0 : (findings.starts[pointed] ?? 0)
  const rows = isWide
    ? beside(ledger(), columns + 4, findings.rows)
    : debrief.view === 'ledger'
      ? size.rows >= TALL_ROWS
        ? [...ledger(), '', ...findings.rows]
        : ledger()
      : debrief.view === 'findings'
        ? findings.rows
        : callScoreRows(play, debrief.chosen, columns, theme)
  const lane = hasLaneAbove(debrief.view, size) ? laneAndLegend(play, debrief, size, theme) : []
  const high = size.rows - 1 - 2 - lane.length
  const first = Math.min(pointedRow + debrief.scroll, Math.max(0, rows.length - high))
  const isCut = first + high < rows.length
  const shown = indent(rows.slice(first, isCut ? first + high - 1 : first + high), 1)
  return [...lane, '', ...shown, ...(isCut ? [textRow(theme, [` ${theme.glyphs.ellipsis} more below`, 'faint'])] : [])]
}
