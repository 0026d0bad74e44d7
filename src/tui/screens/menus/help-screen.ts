import { beside, indent, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import type { KeyBinding, KeyContext } from '../../keys/binding.js'
import { KEY_BINDINGS } from '../../keys/keys.js'
import { contextKeyLine, shownKey } from '../../parts/key-hints.js'

const KEY_COLUMNS = 7
const SECTION_COLUMNS = 42
/** Commands that mean the same in every place and are told once. */
const COMMON: readonly KeyBinding['command'][] = ['back', 'quit', 'help']

const TITLES: Partial<Record<KeyContext, string>> = {
  bowler: 'Choosing who bowls',
  kit: 'Bag and bowler',
  form: 'Filling in',
  settings: 'Settings',
  play: 'Deciding a throw',
  call: 'Calling the reaction',
  debrief: 'Looking back',
  'what-if': 'What if',
}
/** Told after the place help was asked in, as far as there is room. */
const FURTHER: readonly KeyContext[] = ['play', 'debrief', 'what-if', 'call', 'bowler', 'kit', 'form', 'settings']

/** The keys of the place help was asked in first, then whatever else there is room for; all from the one table. */
export function helpScreen(context: KeyContext, size: Size, theme: Theme): string[] {
  const of = (place: KeyContext) => KEY_BINDINGS.filter((binding) => binding.contexts.includes(place))
  const own = (place: KeyContext) => of(place).filter((binding) => !COMMON.includes(binding.command))
  const section = (place: KeyContext) => [
    ...sectionRows(TITLES[place] ?? 'This list', own(place), theme),
    ...moreKeys(place, theme),
  ]
  const common = of('scenarios').filter((binding) => COMMON.includes(binding.command))
  const everywhere = [
    ...sectionRows('Everywhere', common, theme),
    keyRow('Ctrl-L', 'draw the screen afresh', theme),
    keyRow('Ctrl-C', 'leave; the block is kept', theme),
  ]
  const places = FURTHER.filter((place) => place !== context)
  const columns = intoColumns(
    [section(context), everywhere, ...places.map(section)],
    size.rows - 4,
    Math.max(2, Math.floor(size.columns / SECTION_COLUMNS)),
  )
  const [first = [], ...others] = columns
  const rows = others.reduce((left, right, place) => beside(left, SECTION_COLUMNS * (place + 1), right), first)
  const body = ['', textRow(theme, [' Keys', 'strong']), '', ...indent(rows, 1)]
  return page(body, contextKeyLine('help', size.columns, theme), size)
}

/** Sections one under the other in as many columns as there are; each column but the last takes what fits it whole. */
function intoColumns(sections: readonly string[][], rows: number, count: number): string[][] {
  const columns: string[][] = [[...(sections[0] ?? [])], ...Array.from({ length: count - 1 }, () => [])]
  for (const section of sections.slice(1)) {
    const column = columns.find((one) => one.length + section.length + (one.length > 0 ? 1 : 0) <= rows)
    if (column) column.push(...(column.length > 0 ? [''] : []), ...section)
  }
  return columns
}

/** What no row of the table names: ranges of keys, and words that want explaining. */
function moreKeys(place: KeyContext, theme: Theme): string[] {
  if (place === 'debrief') {
    return [keyRow('Fair', 'best by what could be known', theme), keyRow('Oil', 'best with the oil in sight', theme)]
  }
  if (place === 'play' || place === 'what-if') return [keyRow('1 to 8', 'a ball of the bag', theme)]
  return place === 'form' ? [keyRow('letters', 'typed into the line', theme)] : []
}
function sectionRows(title: string, bindings: readonly KeyBinding[], theme: Theme): string[] {
  return [
    textRow(theme, [title, 'strong']),
    ...bindings.map((binding) => keyRow(shownKey(binding.shown, theme), binding.does, theme)),
  ]
}

const keyRow = (keys: string, does: string, theme: Theme): string =>
  textRow(theme, [`  ${keys.padEnd(KEY_COLUMNS)}`, 'accent'], ` ${does}`)
