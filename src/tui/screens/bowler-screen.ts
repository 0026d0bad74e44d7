import { ballWords } from '../../scenarios/plain/words.js'
import type { Scenario } from '../../scenarios/scenario.js'
import type { BallSpecification } from '../../sim/ball/specification.js'
import { metresPerSecondToMph, radiansPerSecondToRpm, radiansToDegrees } from '../../sim/units.js'
import { beside, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { contextKeyLine } from '../parts/key-hints.js'
import { menuRows, menuWidth } from '../parts/menu.js'
import { wrapWords } from '../terminal/fit.js'

/** Head, bowler, heading, notice and keys. */
const ROWS_AROUND_BAG = 10

/** Words for a level in the list. */
function levelWords(level: string): string {
  return /^\d+$/.test(level) ? `${level} average` : level
}

/** Who bowls and what is in the bag. `scenario` already has the chosen bowler in it. */
export function bowlerScreen(
  scenario: Scenario,
  levels: readonly string[],
  cursor: number,
  notice: string,
  size: Size,
  theme: Theme,
): string[] {
  const { bowler, bag } = scenario.setup
  const menu = menuRows(["The scenario's own bowler", ...levels.map(levelWords)], cursor, theme)
  const menuColumns = menuWidth(menu)
  const columns = Math.min(76, size.columns - menuColumns - 2)
  const speed = metresPerSecondToMph(bowler.strike.speedMetresPerSecond).toFixed(1)
  const spin = radiansPerSecondToRpm(bowler.strike.spinRadiansPerSecond).toFixed(0)
  const turn = radiansToDegrees(bowler.strike.rotationRadians).toFixed(0)
  const about = [
    textRow(theme, [`${bowler.hand}-handed`, 'accent'], `, ${levelWords(bowler.level)}`),
    `${speed} mph, ${spin} rpm, ${turn} degrees of side rotation`,
    '',
    textRow(theme, ['The bag', 'strong']),
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
    textRow(theme, [` ${notice}`, 'loss']),
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
