import type { Scenario } from '../../../scenarios/files/scenario/scenario.js'
import { BUILT_IN_HARDNESS } from '../../../scenarios/library/hardness-data.js'
import { hardnessWord } from '../../../sim/analysis/explore/hardness.js'
import type { BlockSetup } from '../../../sim/world/block/types.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { scrolledMenuRows } from '../../parts/menu.js'
import { clipRow, columnsOf, wrapWords } from '../../terminal/fit.js'

const POSTED = {
  sheet: 'The pattern sheet is posted.',
  length: "Only the pattern's length is posted.",
  nothing: 'Nothing is posted about the oil.',
} as const
/** Blank, title, notice and the keys. */
const ROWS_AROUND_LIST = 4
const MARGIN_COLUMNS = 6

/** Which lanes to bowl on, with what each is for. */
export function scenarioScreen(
  scenarios: readonly Scenario[],
  cursor: number,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const titles = scenarios.map(({ title }) => title)
  // The list keeps its width while it scrolls.
  const menuColumns = Math.max(0, ...titles.map(columnsOf)) + MARGIN_COLUMNS
  const menu = scrolledMenuRows(titles, cursor, size.rows - ROWS_AROUND_LIST, theme).map((row) =>
    clipRow(` ${row}`, menuColumns - 1),
  )
  const chosen = scenarios[cursor]
  const columns = Math.min(72, size.columns - menuColumns - 2)
  const about = chosen ? aboutRows(chosen, columns, theme) : ['There is no scenario to choose.']
  const body = [
    '',
    textRow(theme, [' New block', 'strong'], ['  choose the lanes', 'faint']),
    textRow(theme, [` ${notice}`, 'loss']),
    ...beside(menu, menuColumns, about),
  ]
  return page(body, contextKeyLine('scenarios', size.columns, theme), size)
}

function aboutRows(scenario: Scenario, columns: number, theme: Theme): string[] {
  const faint = (text: string) => wrapWords(text, columns).map((row) => textRow(theme, [row, 'faint']))
  return [
    ...wrapWords(scenario.purpose, columns),
    '',
    ...setupSentences(scenario.setup).flatMap(faint),
    ...hardnessRows(scenario.name, columns, theme),
    ...(scenario.notes === '' ? [] : ['', ...faint(scenario.notes)]),
  ]
}

function hardnessRows(name: string, columns: number, theme: Theme): string[] {
  const hardness = BUILT_IN_HARDNESS[name]
  if (!hardness) return []
  const lost = (pins: number) => pins.toFixed(0)
  const sentence = `Moving by rule of thumb loses about ${lost(hardness.thumbPins)} pins a game here, never moving ${lost(hardness.stayPins)}.`
  return [
    '',
    textRow(theme, ['How hard: ', 'faint'], [hardnessWord(hardness), 'accent']),
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
