import { LEDGER_LEAD, LEDGER_PARTS } from '../../../scenarios/words/ledger-words.js'
import { signedPins } from '../../../scenarios/words/words.js'
import type { Account } from '../../../sim/analysis/debrief/account.js'
import { LEDGER_TERMS, type LedgerTerms, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import type { Spot } from '../../../sim/world/block/types.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import { textRow } from '../../draw/text-row.js'
import type { Ink, Theme } from '../../draw/theme.js'
import { wrapWords } from '../../terminal/fit.js'

const NAME_COLUMNS = 12
const CELL_COLUMNS = 10
const ABOUT_COLUMNS = 10
const TABLE_COLUMNS = NAME_COLUMNS + CELL_COLUMNS * (LEDGER_TERMS.length + 1)
/** Left of the bars, where there is room for them. */
const GAP_COLUMNS = 4
const LEAST_BAR_COLUMNS = 16
const MOST_BAR_COLUMNS = 40
const SMALLEST_PINS = 0.05

interface LedgerRow {
  readonly name: string
  readonly ledger: LedgerTerms
  readonly isChosen: boolean
  readonly isSum: boolean
}

/** Where the pins of the chosen throw's game went, frame by frame; the five parts add up to the last column. */
export function ledgerRows(account: Account, spot: Spot, columns: number, theme: Theme): string[] {
  const { sums } = account
  const game = Math.max(1, spot.game)
  const frames = sums.frames.filter((one) => one.game === game)
  const total = sums.games.find((one) => one.game === game)
  if (!total) return [textRow(theme, ['Nothing was thrown that counts.', 'faint'])]
  const rows: LedgerRow[] = [
    ...frames.map(({ frame, ledger }) => ({
      name: `Frame ${frame}`,
      ledger,
      isChosen: frame === spot.frame,
      isSum: false,
    })),
    { name: `Game ${game}`, ledger: total.ledger, isChosen: false, isSum: true },
    ...(sums.games.length > 1 ? [{ name: 'Block', ledger: sums.block.ledger, isChosen: false, isSum: true }] : []),
  ]
  return [
    textRow(theme, ['Where the pins went', 'strong'], [`  ${LEDGER_LEAD}`, 'faint']),
    ...tableRows(rows, columns, theme),
    '',
    ...aboutRows(columns, theme),
  ]
}

function tableRows(rows: readonly LedgerRow[], columns: number, theme: Theme): string[] {
  const canvas = newCanvas(columns, rows.length + 1)
  LEDGER_TERMS.forEach((term, place) => {
    putRight(canvas, NAME_COLUMNS + CELL_COLUMNS * (place + 1), 0, LEDGER_PARTS[term][0], 'faint')
  })
  putRight(canvas, TABLE_COLUMNS, 0, 'in all', 'faint')
  rows.forEach(({ name, ledger, isChosen, isSum }, index) => {
    const y = index + 1
    const figureInk: Ink = isSum ? 'strong' : 'plain'
    put(canvas, 2, y, name, isChosen ? 'accent' : figureInk)
    if (isChosen) put(canvas, 0, y, theme.glyphs.pointer, 'accent')
    LEDGER_TERMS.forEach((term, place) => {
      const ink = term === 'givenAwayPins' && ledger[term] >= SMALLEST_PINS ? 'loss' : figureInk
      putRight(canvas, NAME_COLUMNS + CELL_COLUMNS * (place + 1), y, signedPins(-ledger[term]), ink)
    })
    putRight(canvas, TABLE_COLUMNS, y, signedPins(-shortfallOf(ledger)), figureInk)
  })
  const from = TABLE_COLUMNS + GAP_COLUMNS
  const barColumns = Math.min(MOST_BAR_COLUMNS, columns - from)
  if (barColumns >= LEAST_BAR_COLUMNS) {
    const frames = rows.filter(({ isSum }) => !isSum)
    const most = Math.max(1, ...frames.map(({ ledger }) => ledger.givenAwayPins))
    put(canvas, from, 0, 'cost of the choice', 'faint')
    frames.forEach(({ ledger }, index) => {
      const length = Math.round((ledger.givenAwayPins / most) * barColumns)
      put(canvas, from, index + 1, theme.glyphs.block.repeat(length), 'loss')
    })
  }
  return canvasRows(canvas, theme)
}

function aboutRows(columns: number, theme: Theme): string[] {
  return LEDGER_TERMS.flatMap((term) => {
    const [heading, about] = LEDGER_PARTS[term]
    return wrapWords(about, Math.min(columns, 110) - ABOUT_COLUMNS).map((words, line) =>
      textRow(theme, (line === 0 ? heading : '').padEnd(ABOUT_COLUMNS), [words, 'faint']),
    )
  })
}
