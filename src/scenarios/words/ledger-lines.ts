import type { Account } from '../../sim/analysis/debrief/account.js'
import { LEDGER_TERMS, type LedgerTerms, shortfallOf } from '../../sim/analysis/debrief/ledger/ledger.js'

/** The five parts as they are called in columns. */
export const LEDGER_TITLES: Readonly<Record<keyof LedgerTerms, string>> = {
  givenAwayPins: 'given away',
  patternSwingPins: 'swing',
  hiddenPins: 'hidden',
  deliveryPins: 'delivery',
  carryPins: 'carry',
}

/** Where the pins went, frame by frame: five parts that add up to the distance from the best with the oil in sight. */
export function ledgerLines({ sums }: Account): string[] {
  return [
    '',
    'Where the pins went, against the best with the oil in sight; below 0 is gained',
    'given away: by the choice, as far as could be known (before anything is called too close); swing: how the oil turned',
    'out for that choice; hidden: what not seeing the oil cost; delivery: this throw against the usual miss; carry: the pins',
    '',
    row(
      '',
      LEDGER_TERMS.map((term) => LEDGER_TITLES[term]),
      'in all',
    ),
    ...sums.games.flatMap(({ game, ledger }) => [
      ...sums.frames.filter((one) => one.game === game).map((one) => figures(`${game}-${one.frame}`, one.ledger)),
      figures(`game ${game}`, ledger),
    ]),
    ...(sums.games.length > 1 ? [figures('block', sums.block.ledger)] : []),
  ]
}

function figures(name: string, ledger: LedgerTerms): string {
  const pins = (value: number): string => (Math.abs(value) < 0.05 ? '0.0' : value.toFixed(1))
  return row(
    name,
    LEDGER_TERMS.map((term) => pins(ledger[term])),
    pins(shortfallOf(ledger)),
  )
}

function row(name: string, cells: readonly string[], last: string): string {
  return `${name.padEnd(8)}${cells.map((cell) => cell.padStart(11)).join('')}  =${last.padStart(8)}`
}
