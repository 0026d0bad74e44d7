import { ballWords } from '../../scenarios/plain/words.js'
import type { BallSpecification } from '../../sim/ball/specification.js'
import { metresPerSecondToMph, radiansPerSecondToRpm, radiansToDegrees } from '../../sim/units.js'
import { beside, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import type { OwnKit } from '../kit/own-kit.js'
import type { Mode } from '../notes.js'
import { contextKeyLine } from '../parts/key-hints.js'
import { menuRows, menuWidth } from '../parts/menu.js'
import type { BowlerChoice } from '../state/app-state.js'
import type { BowlerEntry, Chosen } from '../state/bowler-choice.js'
import { clipRow, wrapWords } from '../terminal/fit.js'

/** Head, bowler, heading, notice and keys. */
const ROWS_AROUND_BAG = 12

const MODE_ABOUT: Readonly<Record<Mode, string>> = {
  drill: 'drill: each grade at once, before the ball shows its result',
  block: 'block: grades once it is over',
  test: 'test: grades in the debrief only',
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
export function bowlerScreen(
  { choice, chosen, entries, kit, notice }: BowlerScreenParts,
  size: Size,
  theme: Theme,
): string[] {
  const scenario = 'scenario' in chosen ? chosen.scenario : choice.scenario
  const { bowler, bag } = scenario.setup
  const menu = menuRows(
    entries.map((entry) => clipRow(entryWords(entry, kit), 26)),
    choice.cursor,
    theme,
  )
  const whose = choice.bag === 'own' && kit.bag.length > 0 ? 'Your own bag' : "The scenario's bag"
  const menuColumns = menuWidth(menu)
  const columns = Math.min(76, size.columns - menuColumns - 2)
  const speed = metresPerSecondToMph(bowler.strike.speedMetresPerSecond).toFixed(1)
  const spin = radiansPerSecondToRpm(bowler.strike.spinRadiansPerSecond).toFixed(0)
  const turn = radiansToDegrees(bowler.strike.rotationRadians).toFixed(0)
  const about = [
    textRow(theme, [`${bowler.hand}-handed`, 'accent'], `, ${bowler.name}`),
    `${speed} mph, ${spin} rpm, ${turn} degrees of side rotation`,
    '',
    textRow(theme, ['Grades  ', 'faint'], [MODE_ABOUT[choice.mode], 'plain']),
    '',
    textRow(theme, [whose, 'strong']),
    ...bagRows(bag, columns, size.rows - ROWS_AROUND_BAG, theme),
  ]
  const body = [
    '',
    textRow(theme, [` ${scenario.title}`, 'strong'], ['  choose who bowls', 'faint']),
    '',
    ...beside(
      menu.map((row) => ` ${row}`),
      menuColumns,
      about,
    ),
    '',
    textRow(theme, [` ${'problem' in chosen ? chosen.problem : notice}`, 'loss']),
  ]
  return page(body, contextKeyLine('bowler', size.columns, theme), size)
}

/** Each ball with all its figures where they fit, else with its surface only. */
function bagRows(bag: readonly BallSpecification[], columns: number, rows: number, theme: Theme): string[] {
  const full = bag.map((ball) => wrapWords(ballWords(ball), columns - 2))
  const fits = full.reduce((sum, lines) => sum + lines.length, 0) <= rows
  const lines = fits ? full : bag.map((ball) => [`${ball.name}, ${surfaceWords(ball)}`])
  return lines.flatMap((ball, index) =>
    ball.map((row, line) =>
      line === 0 ? textRow(theme, [`${index + 1} `, 'accent'], row) : textRow(theme, [`  ${row}`, 'faint']),
    ),
  )
}

const surfaceWords = (ball: BallSpecification): string => `${ball.surfaceGrit} grit${ball.polished ? ', polished' : ''}`
