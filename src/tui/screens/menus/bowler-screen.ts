import { visibleLine } from '../../../scenarios/files/text/visible-text.js'
import type { Mode } from '../../../scenarios/store/block-notes.js'
import type { OwnKit } from '../../../scenarios/store/own-kit.js'
import { ballWords } from '../../../scenarios/words/words.js'
import { metresPerSecondToMph, radiansPerSecondToRpm, radiansToDegrees } from '../../../sim/units.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import type { BowlerProfile } from '../../../sim/world/bowler/profile.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine, shownKey } from '../../parts/key-hints.js'
import { menuRows, menuWidth } from '../../parts/menu.js'
import type { BowlerChoice } from '../../state/app-state.js'
import type { BowlerEntry, Chosen } from '../../state/bowler-choice.js'
import { clipRow, wrapWords } from '../../terminal/fit.js'

/** Blank, title, notice and keys. */
const ROWS_AROUND = 4
const KEY_COLUMNS = 5
const LABEL_COLUMNS = 8

const MODE_ABOUT: Readonly<Record<Mode, readonly [name: string, about: string]>> = {
  drill: ['drill', 'Each grade is told before the ball shows its result.'],
  block: ['block', 'Nothing is told until the block is over, as in a league night.'],
  test: ['test', 'Nothing is told until the debrief.'],
}

/** Words for a level in the list. */
function levelWords(level: string): string {
  return /^\d+$/.test(level) ? `${level} average` : level
}

function entryWords(entry: BowlerEntry, kit: OwnKit): string {
  if (entry.kind === 'scenario') return "The scenario's own bowler"
  if (entry.kind === 'level') return levelWords(entry.level)
  const { bowler } = kit
  return bowler?.level === 'own' ? `Yours: ${bowler.name}` : 'Your bowler'
}

export interface BowlerScreenParts {
  readonly choice: BowlerChoice
  readonly chosen: Chosen
  readonly entries: readonly BowlerEntry[]
  readonly kit: OwnKit
  readonly notice: string
}

/** Who bowls, with what, and when grades are told. */
export function bowlerScreen(parts: BowlerScreenParts, size: Size, theme: Theme): string[] {
  const { choice, chosen, entries, kit, notice } = parts
  const menu = menuRows(
    entries.map((entry) => clipRow(entryWords(entry, kit), 26)),
    choice.cursor,
    theme,
  )
  const menuColumns = menuWidth(menu)
  const columns = Math.min(76, size.columns - menuColumns - 2)
  const { bowler, bag } = ('scenario' in chosen ? chosen.scenario : choice.scenario).setup
  const told = [...whoRows(bowler, columns), '', ...choiceRows(parts, columns, theme), '']
  // Where the bag would be cut the air goes first.
  const isTight = told.length + 1 + bag.length > size.rows - ROWS_AROUND
  const about = isTight ? told.filter((row) => row !== '') : told
  const bagTitle = textRow(theme, ['The bag', 'strong'])
  const body = [
    '',
    textRow(
      theme,
      [` ${choice.scenario.title}`, 'strong'],
      [
        choice.day === null ? '  choose who bowls' : `  lane of the day ${choice.day}: one oil and luck for all`,
        'faint',
      ],
    ),
    textRow(theme, [` ${'problem' in chosen ? chosen.problem : notice}`, 'loss']),
    ...beside(
      menu.map((row) => ` ${row}`),
      menuColumns,
      [...about, bagTitle, ...bagRows(bag, columns, size.rows - ROWS_AROUND - about.length - 1, theme)],
    ),
  ]
  return page(body, contextKeyLine(choice.naming ? 'naming' : 'bowler', size.columns, theme), size)
}

function whoRows(bowler: BowlerProfile, columns: number): string[] {
  const speed = metresPerSecondToMph(bowler.strike.speedMetresPerSecond).toFixed(1)
  const spin = radiansPerSecondToRpm(bowler.strike.spinRadiansPerSecond).toFixed(0)
  const turn = radiansToDegrees(bowler.strike.rotationRadians).toFixed(0)
  return [
    clipRow(visibleLine(`${bowler.name}, ${bowler.hand}-handed`), columns),
    clipRow(`${speed} mph, ${spin} rpm, ${turn} degrees of side rotation`, columns),
  ]
}

/** What else can be chosen here, each with its key. */
function choiceRows({ choice, entries, kit }: BowlerScreenParts, columns: number, theme: Theme): string[] {
  const row = (key: string, label: string, value: string) =>
    textRow(
      theme,
      [shownKey(key, theme).padEnd(KEY_COLUMNS), 'accent'],
      [label.padEnd(LABEL_COLUMNS), 'faint'],
      [value, 'strong'],
    )
  const { naming } = choice
  const typed = (what: 'seed' | 'guest', words: string) =>
    clipRow(naming?.what === what ? `${naming.text}_` : words, columns - KEY_COLUMNS - LABEL_COLUMNS)
  const isTypical = entries[choice.cursor]?.kind === 'level'
  const [mode, about] = MODE_ABOUT[choice.mode]
  return [
    row('← →', 'Hand', choice.hand),
    isTypical
      ? row('s', 'Style', choice.style)
      : textRow(theme, [`${'s'.padEnd(KEY_COLUMNS)}Style   as written`, 'faint']),
    row('b', 'Bag', bagWords(choice.bag, kit)),
    row('m', 'Grades', mode),
    ...wrapWords(about, columns - KEY_COLUMNS - LABEL_COLUMNS).map((words) =>
      textRow(theme, [' '.repeat(KEY_COLUMNS + LABEL_COLUMNS) + words, 'faint']),
    ),
    row('e', 'Seed', typed('seed', choice.seed === '' ? 'a fresh one' : choice.seed)),
    row('g', 'Guest', typed('guest', choice.guest === null ? 'nobody' : `${choice.guest}, by turns`)),
  ]
}

function bagWords(bag: BowlerChoice['bag'], kit: OwnKit): string {
  if (kit.bag.length === 0) return "the scenario's; you have none yet"
  return bag === 'own' ? 'your own' : "the scenario's"
}

/** Each ball with all its figures where they fit, else with its surface only. */
function bagRows(bag: readonly BallSpecification[], columns: number, rows: number, theme: Theme): string[] {
  const full = bag.map((ball) => wrapWords(ballWords(ball), columns - 2))
  const fits = full.reduce((sum, lines) => sum + lines.length, 0) <= rows
  const lines = fits ? full : bag.map((ball) => [clipRow(`${ball.name}, ${surfaceWords(ball)}`, columns - 2)])
  return lines.flatMap((ball, index) =>
    ball.map((row, line) => textRow(theme, [line === 0 ? `${index + 1} ` : '  ', 'accent'], row)),
  )
}

const surfaceWords = (ball: BallSpecification): string => `${ball.surfaceGrit} grit${ball.polished ? ', polished' : ''}`
