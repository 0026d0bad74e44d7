import type { Scenario } from '../../scenarios/scenario.js'
import type { BlockSetup } from '../../sim/block/types.js'
import { beside, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { contextKeyLine } from '../parts/key-hints.js'
import { menuRows, menuWidth } from '../parts/menu.js'
import { wrapWords } from '../terminal/fit.js'

const POSTED = {
  sheet: 'The pattern sheet is posted.',
  length: "Only the pattern's length is posted.",
  nothing: 'Nothing is posted about the oil.',
} as const

/** Which lanes to bowl on, with what each is for. */
export function scenarioScreen(
  scenarios: readonly Scenario[],
  cursor: number,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const menu = menuRows(
    scenarios.map((scenario) => scenario.title),
    cursor,
    theme,
  )
  const chosen = scenarios[cursor]
  const menuColumns = menuWidth(menu)
  const columns = Math.min(72, size.columns - menuColumns - 2)
  const about = chosen ? aboutRows(chosen, columns, theme) : ['There is no scenario to choose.']
  const body = [
    '',
    textRow(theme, [' New block', 'strong'], ['  choose the lanes', 'faint']),
    '',
    ...beside(
      menu.map((row) => ` ${row}`),
      menuColumns,
      about,
    ),
    '',
    textRow(theme, [` ${notice}`, 'loss']),
  ]
  return page(body, contextKeyLine('scenarios', size.columns, theme), size)
}

function aboutRows(scenario: Scenario, columns: number, theme: Theme): string[] {
  const faint = (text: string) => wrapWords(text, columns).map((row) => textRow(theme, [row, 'faint']))
  return [
    ...wrapWords(scenario.purpose, columns),
    '',
    ...setupSentences(scenario.setup).flatMap(faint),
    ...(scenario.notes === '' ? [] : ['', ...faint(scenario.notes)]),
  ]
}

function setupSentences(setup: BlockSetup): string[] {
  const games = setup.games === 1 ? 'One game' : `${setup.games} games`
  const lanes = setup.lanes.length === 1 ? setup.lanes[0].name : `${setup.lanes[0].name} and ${setup.lanes[1].name}`
  const practice = setup.practiceThrows === 0 ? 'no practice' : `${setup.practiceThrows} practice throws on each lane`
  const others = setup.field.length === 0 ? 'Nobody else bowls there.' : `${setup.field.length} others bowl there too.`
  const scoring = setup.scoring === 'current-frame' ? ' Current-frame scoring.' : ''
  return [`${games} on ${lanes}, ${practice}.${scoring}`, POSTED[setup.posted], others]
}
