import type { Account } from '../../sim/account/account.js'
import { LEDGER_TERMS, type LedgerTerms, shortfallOf } from '../../sim/account/ledger.js'
import type { Spot } from '../../sim/block/types.js'
import { canvasRows, newCanvas, put, putRight } from '../draw/canvas.js'
import { textRow } from '../draw/text-row.js'
import type { Ink, Theme } from '../draw/theme.js'
import { wrapWords } from '../terminal/fit.js'

const HEADINGS: Readonly<Record<keyof LedgerTerms, string>> = {
  givenAwayPins: 'choice',
  patternSwingPins: 'swing',
  hiddenPins: 'hidden',
  deliveryPins: 'hand',
  carryPins: 'pins',
}
const ABOUT =
  'Pins short of the best with the oil in sight; below 0 is gained. Choice: lost by what could be known, before anything is called too close to call; the only part that is graded. Swing: how the oil turned out for it. Hidden: what not seeing the oil cost. Hand: this delivery against your usual. Pins: how they fell for it.'
const NAME_COLUMNS = 12
const CELL_COLUMNS = 10
const SMALLEST_PINS = 0.05

/** Where the pins of the chosen throw's game went, frame by frame; the five parts add up to the last column. */
export function ledgerRows(account: Account, spot: Spot, columns: number, theme: Theme): string[] {
  const { sums } = account
  const game = Math.max(1, spot.game)
  const frames = sums.frames.filter((one) => one.game === game)
  const total = sums.games.find((one) => one.game === game)
  if (!total) return [textRow(theme, ['Nothing was thrown that counts.', 'faint'])]
  const rows = [
    ...frames.map(({ frame, ledger }) => ({ name: `Frame ${frame}`, ledger, isChosen: frame === spot.frame })),
    { name: `Game ${game}`, ledger: total.ledger, isChosen: false },
    ...(sums.games.length > 1 ? [{ name: 'Block', ledger: sums.block.ledger, isChosen: false }] : []),
  ]
  const canvas = newCanvas(Math.min(columns, NAME_COLUMNS + CELL_COLUMNS * (LEDGER_TERMS.length + 1)), rows.length + 1)
  LEDGER_TERMS.forEach((term, place) => {
    putRight(canvas, NAME_COLUMNS + CELL_COLUMNS * (place + 1), 0, HEADINGS[term], 'faint')
  })
  putRight(canvas, canvas.columns, 0, 'in all', 'faint')
  rows.forEach(({ name, ledger, isChosen }, index) => {
    const y = index + 1
    const isSum = index >= frames.length
    put(canvas, 2, y, name, isChosen ? 'accent' : isSum ? 'strong' : 'plain')
    if (isChosen) put(canvas, 0, y, theme.glyphs.pointer, 'accent')
    LEDGER_TERMS.forEach((term, place) => {
      const ink: Ink = term === 'givenAwayPins' && ledger[term] >= SMALLEST_PINS ? 'loss' : isSum ? 'strong' : 'plain'
      putRight(canvas, NAME_COLUMNS + CELL_COLUMNS * (place + 1), y, pinsText(ledger[term]), ink)
    })
    putRight(canvas, canvas.columns, y, pinsText(shortfallOf(ledger)), isSum ? 'strong' : 'plain')
  })
  return [
    textRow(theme, ['Where the pins went', 'strong']),
    ...wrapWords(ABOUT, Math.min(columns, 110)).map((row) => textRow(theme, [row, 'faint'])),
    '',
    ...canvasRows(canvas, theme),
  ]
}

const pinsText = (pins: number): string => (Math.abs(pins) < SMALLEST_PINS ? '0.0' : pins.toFixed(1))
