import type { LedgerTerms } from '../ledger/ledger.js'

/** Luck smaller than this is not worth a word. */
export const NOTED_LUCK_PINS = 8

/** A throw whose result says nothing about the choice: no blame, no credit. */
export interface LuckNote {
  /** Number of the throw in the block, from 0. */
  readonly index: number
  readonly kind: 'good-choice-bad-luck' | 'costly-choice-good-luck'
  /** Pins that luck took, above 0, or gave, below 0: delivery and carry together. */
  readonly luckPins: number
  readonly words: string
}

interface Graded {
  readonly index: number
  readonly frame: number
  readonly chargedPins: number
  readonly ledger: LedgerTerms
}

/** The strongest case of each kind, so that results are not taken for grades. */
export function luckNotes(throws: readonly Graded[]): LuckNote[] {
  const luckOf = ({ ledger }: Graded): number => ledger.deliveryPins + ledger.carryPins
  const unlucky = throws.filter((one) => one.chargedPins === 0 && luckOf(one) > NOTED_LUCK_PINS)
  const lucky = throws.filter((one) => one.chargedPins > 0 && luckOf(one) < -NOTED_LUCK_PINS)
  const most = (list: readonly Graded[]): Graded[] =>
    list.length === 0 ? [] : [list.reduce((best, one) => (Math.abs(luckOf(one)) > Math.abs(luckOf(best)) ? one : best))]
  return [
    ...most(unlucky).map(
      (one): LuckNote => ({
        index: one.index,
        kind: 'good-choice-bad-luck',
        luckPins: luckOf(one),
        words: `Frame ${one.frame}: the choice gave nothing away; ${shares(one)}. Nothing to change here.`,
      }),
    ),
    ...most(lucky).map(
      (one): LuckNote => ({
        index: one.index,
        kind: 'costly-choice-good-luck',
        luckPins: luckOf(one),
        words: `Frame ${one.frame}: the result looks well, but the choice gave ${one.chargedPins.toFixed(1)} pins away; ${shares(one)}.`,
      }),
    ),
  ]
}

/** Pins not worth a word beside others. */
const NEXT_TO_NOTHING_PINS = 0.5

function shares({ ledger }: Graded): string {
  const parts: readonly (readonly [string, number])[] = [
    ['the delivery', ledger.deliveryPins],
    ['the pins', ledger.carryPins],
  ]
  return parts
    .filter(([, pins]) => Math.abs(pins) >= NEXT_TO_NOTHING_PINS)
    .map(([what, pins]) => `${what} ${pins > 0 ? 'took' : 'gave'} ${Math.abs(pins).toFixed(1)} pins`)
    .join(', ')
}
