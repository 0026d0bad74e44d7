import type { Scenario } from '../../../scenarios/files/scenario/scenario.js'
import { BUILT_IN_DIFFICULTY } from '../../../scenarios/library/difficulty-data.js'
import { difficultyWord } from '../../../sim/analysis/explore/difficulty.js'
import type { BlockSetup } from '../../../sim/world/block/types.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { filterSpans } from '../../parts/filter-line.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { scrolledMenuRows } from '../../parts/menu.js'
import type { Filter, Played } from '../../state/app-state.js'
import { clipRow, columnsOf, fitRow, wrapWords } from '../../terminal/fit.js'

const POSTED = {
  sheet: 'The pattern sheet is posted.',
  length: "Only the pattern's length is posted.",
  nothing: 'Nothing is posted about the oil.',
} as const
/** Blank, title, notice and the keys. */
const ROWS_AROUND_LIST = 4
/** Left of a title, and right of the list; and a mark with the best game. */
const MARGIN_COLUMNS = 5
const MARK_COLUMNS = 6

export interface ScenarioList {
  /** What the filter lets through. */
  readonly listed: readonly Scenario[]
  readonly cursor: number
  readonly filter?: Filter
  readonly played: ReadonlyMap<string, Played> | null
  readonly notice: string
}

/** Which lanes to bowl on, with what each is for. */
export function scenarioScreen(
  { listed, cursor, filter, played, notice }: ScenarioList,
  size: Size,
  theme: Theme,
): string[] {
  const rows = size.rows - ROWS_AROUND_LIST
  const titleColumns = Math.max(0, ...listed.map(({ title }) => columnsOf(title)))
  // The list keeps its width while it scrolls.
  const menuColumns = titleColumns + MARGIN_COLUMNS + (played && played.size > 0 ? MARK_COLUMNS : 0)
  const menu = scrolledMenuRows(
    listed.map(({ title }) => labelOf(title, titleColumns, played?.get(title), theme)),
    cursor,
    rows,
    theme,
  ).map((row) => clipRow(` ${row}`, menuColumns - 1))
  const chosen = listed[cursor]
  const columns = Math.min(72, size.columns - menuColumns - 1)
  const about = chosen
    ? aboutRows(chosen, played?.get(chosen.title), columns, theme)
    : wrapWords('No lane is said to have all of these words. Esc shows every lane again.', columns)
  const body = [
    '',
    textRow(
      theme,
      [' New block', 'strong'],
      ['  choose the lanes', 'faint'],
      [played && played.size > 0 && !filter ? `; ${theme.glyphs.played} played, with your best game` : '', 'faint'],
      ...filterSpans(filter, theme),
    ),
    textRow(theme, [` ${notice}`, 'loss']),
    ...beside(menu, menuColumns, about.length > rows ? about.filter((row) => row !== '') : about),
  ]
  return page(body, contextKeyLine(filter?.isOpen ? 'filter' : 'scenarios', size.columns, theme), size)
}

/** A lane's title; one that was played has a mark and its best game. */
function labelOf(title: string, columns: number, played: Played | undefined, theme: Theme): string {
  const name = fitRow(title, columns)
  if (!played) return name
  return `${name} ${theme.glyphs.played}${played.bestGame === null ? '' : ` ${String(played.bestGame).padStart(3)}`}`
}

function aboutRows(scenario: Scenario, played: Played | undefined, columns: number, theme: Theme): string[] {
  const faint = (text: string) => wrapWords(text, columns).map((row) => textRow(theme, [row, 'faint']))
  return [
    ...wrapWords(scenario.purpose, columns),
    '',
    ...setupSentences(scenario.setup).flatMap(faint),
    ...difficultyRows(scenario.name, columns, theme),
    ...(played ? ['', ...faint(playedSentence(played))] : []),
    // Notes tell of the oil, and so are for those who have its sheet.
    ...(scenario.notes === '' || scenario.setup.posted !== 'sheet' ? [] : ['', ...faint(scenario.notes)]),
  ]
}

function playedSentence({ blocks, bestGame }: Played): string {
  const times = blocks === 1 ? 'once' : blocks === 2 ? 'twice' : `${blocks} times`
  return `Played ${times}${bestGame === null ? '' : `; best game ${bestGame}`}.`
}

function difficultyRows(name: string, columns: number, theme: Theme): string[] {
  const difficulty = BUILT_IN_DIFFICULTY[name]
  if (!difficulty) return []
  const lost = (pins: number) => pins.toFixed(0)
  const memo =
    difficulty.memoPins === undefined ? '' : `, the sheet's best line learnt by heart ${lost(difficulty.memoPins)}`
  const sentence = `Moving by rule of thumb loses about ${lost(difficulty.thumbPins)} pins a game here${memo}, never moving ${lost(difficulty.stayPins)}.`
  return [
    '',
    textRow(theme, ['Difficulty: ', 'faint'], [difficultyWord(difficulty), 'accent']),
    ...wrapWords(sentence, columns).map((row) => textRow(theme, [row, 'faint'])),
  ]
}

function setupSentences(setup: BlockSetup): string[] {
  const games = setup.games === 1 ? 'One game' : `${setup.games} games`
  const lanes = setup.lanes.length === 1 ? setup.lanes[0].name : `${setup.lanes[0].name} and ${setup.lanes[1].name}`
  const each = setup.lanes.length === 1 ? '' : ' on each lane'
  const throws = setup.practiceThrows === 1 ? 'practice throw' : 'practice throws'
  const practice = setup.practiceThrows === 0 ? 'no practice' : `${setup.practiceThrows} ${throws}${each}`
  const scoring = setup.scoring === 'current-frame' ? ' Current-frame scoring.' : ''
  return [`${games} on ${lanes}, ${practice}.${scoring}`, POSTED[setup.posted], othersSentence(setup.field.length)]
}

function othersSentence(count: number): string {
  if (count === 0) return 'You have the lanes to yourself.'
  return count === 1 ? 'One other bowler is on the lanes too.' : `${count} other bowlers are on the lanes too.`
}
