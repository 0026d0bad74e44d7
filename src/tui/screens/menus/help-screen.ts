import { GLOSSARY } from '../../../scenarios/words/glossary.js'
import { beside, indent, page, type Size } from '../../draw/layout.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import type { KeyBinding, KeyContext } from '../../keys/binding.js'
import { KEY_BINDINGS } from '../../keys/keys.js'
import { contextKeyLine, shownKey } from '../../parts/key-hints.js'
import type { Help } from '../../state/app-state.js'
import { wrapWords } from '../../terminal/fit.js'

const KEY_COLUMNS = 7
const SECTION_COLUMNS = 40
const WORD_COLUMNS = 30
/** A word and one line of what it means. */
const WORD_AND_MEANING_COLUMNS = 80
/** Title and the row below it, and the keys. */
const ROWS_AROUND = 3
/** Commands that mean the same in every place and are told once. */
const COMMON: readonly KeyBinding['command'][] = ['back', 'quit', 'help']

const TITLES: Partial<Record<KeyContext, string>> = {
  home: 'At home',
  scenarios: 'Choosing the lanes',
  past: 'Past blocks',
  progress: 'Progress',
  'drill-done': 'A position of a drill',
  'drill-over': 'A drill that is over',
  'own-account': 'Your own account',
  bowler: 'Choosing who bowls',
  filter: 'Filtering a list',
  naming: 'Typing a seed or a name',
  done: 'After a block',
  kit: 'Bag and bowler',
  form: 'Filling in',
  settings: 'Settings',
  play: 'Deciding a throw',
  typing: 'Typing a board',
  call: 'Calling the reaction',
  debrief: 'Looking back',
  'what-if': 'What if',
  practice: 'Practice',
}
/** Told after the place help was asked in. */
const FURTHER: readonly KeyContext[] = [
  'play',
  'typing',
  'debrief',
  'done',
  'what-if',
  'call',
  'practice',
  'bowler',
  'filter',
  'kit',
  'form',
  'settings',
]

/** The keys of the place help was asked in first, then all others; on a second page the words of the trade. */
export function helpScreen(context: KeyContext, help: Help, size: Size, theme: Theme): string[] {
  const room = size.rows - ROWS_AROUND
  const rows = help.page === 'keys' ? keyRows(context, size, theme) : wordRows(size.columns - 3, theme)
  const first = Math.max(0, Math.min(help.scroll, rows.length - room))
  const tab = (name: string, is: Help['page']) =>
    help.page === is
      ? ([`${theme.glyphs.left}${name}${theme.glyphs.right} `, 'accent'] as const)
      : ([` ${name}  `, 'faint'] as const)
  const below = rows.length - room - first
  const more = below > 0 ? textRow(theme, [`${below} more ${below === 1 ? 'row' : 'rows'} below `, 'faint']) : ''
  const head = spreadRow(
    textRow(theme, ' ', tab('Keys', 'keys'), tab('Words of the trade', 'words')),
    more,
    size.columns,
  )
  return page(
    [head, '', ...indent(rows.slice(first, first + room), 1)],
    contextKeyLine('help', size.columns, theme),
    size,
  )
}

function keyRows(context: KeyContext, size: Size, theme: Theme): string[] {
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
    keyRow('Ctrl-Z', 'to the shell; fg comes back', theme),
  ]
  const places = FURTHER.filter((place) => place !== context)
  const columns = intoColumns(
    [section(context), everywhere, ...places.map(section)],
    Math.max(2, Math.floor(size.columns / SECTION_COLUMNS)),
  )
  const [first = [], ...others] = columns
  return others.reduce((left, right, place) => beside(left, SECTION_COLUMNS * (place + 1), right), first)
}

/** Sections one under the other, each in the column that is shortest by then; the first stays first. */
function intoColumns(sections: readonly string[][], count: number): string[][] {
  const columns: string[][] = Array.from({ length: count }, () => [])
  for (const section of sections) {
    const column = columns.reduce((best, one) => (one.length < best.length ? one : best))
    column.push(...(column.length > 0 ? [''] : []), ...section)
  }
  return columns
}

/** What no row of the table names: ranges of keys. */
function moreKeys(place: KeyContext, theme: Theme): string[] {
  if (place === 'play' || place === 'what-if') return [keyRow('digits', 'a board; on Ball, a ball', theme)]
  if (place === 'typing') return [keyRow('digits', 'and a point: the board', theme)]
  return place === 'form' || place === 'filter' ? [keyRow('letters', 'typed into the line', theme)] : []
}

function sectionRows(title: string, bindings: readonly KeyBinding[], theme: Theme): string[] {
  return [
    textRow(theme, [title, 'strong']),
    ...bindings.map((binding) => keyRow(shownKey(binding.shown, theme), binding.does, theme)),
  ]
}

const keyRow = (keys: string, does: string, theme: Theme): string =>
  textRow(theme, [`  ${keys.padEnd(KEY_COLUMNS)}`, 'accent'], ` ${does}`)

/** Every word with what it means, in two columns where both fit; one that needs a second row gets it. */
function wordRows(columns: number, theme: Theme): string[] {
  const across = columns >= 2 * WORD_AND_MEANING_COLUMNS ? 2 : 1
  const rows = GLOSSARY.flatMap(({ word, means }) =>
    wrapWords(means, Math.floor(columns / across) - WORD_COLUMNS).map((row, line) =>
      textRow(theme, [(line === 0 ? word : '').padEnd(WORD_COLUMNS), 'accent'], row),
    ),
  )
  if (across === 1) return rows
  const half = Math.ceil(rows.length / across)
  return beside(rows.slice(0, half), WORD_AND_MEANING_COLUMNS, rows.slice(half))
}
