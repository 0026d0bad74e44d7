import type { Account } from '../../sim/analysis/debrief/account.js'
import { LEDGER_TERMS, type LedgerTerms, shortfallOf } from '../../sim/analysis/debrief/ledger/ledger.js'
import { LEDGER_LEAD, LEDGER_PARTS } from './ledger-words.js'
import { signedPins } from './words.js'

/** Where the pins went, frame by frame: five parts that add up to the distance from the best if the oil is seen. */
export function ledgerLines({ sums }: Account): string[] {
  return [
    '',
    `Where the pins went, ${LEDGER_LEAD}`,
    ...LEDGER_TERMS.map((term) => `  ${LEDGER_PARTS[term][0]}: ${LEDGER_PARTS[term][1]}`),
    '',
    row(
      '',
      LEDGER_TERMS.map((term) => LEDGER_PARTS[term][0]),
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
  return row(
    name,
    LEDGER_TERMS.map((term) => signedPins(-ledger[term])),
    signedPins(-shortfallOf(ledger)),
  )
}

function row(name: string, cells: readonly string[], last: string): string {
  return `${name.padEnd(8)}${cells.map((cell) => cell.padStart(11)).join('')}  =${last.padStart(8)}`
}
