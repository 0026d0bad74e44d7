import type { LedgerTerms } from '../ledger/ledger.js'

/** Luck of a frame smaller than this is not worth a line. */
const NOTED_LUCK_PINS = 5

/** What luck did to a frame: told whatever the choices in it cost. */
export interface LuckNote {
  readonly game: number
  readonly frame: number
  readonly kind: 'delivery' | 'carry'
  /** Pins that it took, above 0, or gave, below 0, over the balls of the frame. */
  readonly luckPins: number
  /** The throw that most of it came from, by its number in the block from 0. */
  readonly index: number
}

interface Graded {
  readonly index: number
  readonly game: number
  readonly frame: number
  readonly ledger: LedgerTerms
}

const KINDS = [
  ['delivery', 'deliveryPins'],
  ['carry', 'carryPins'],
] as const

/** Every frame in which delivery or carry came to much, in the order of play, so that results are not taken for grades. */
export function luckNotes(throws: readonly Graded[]): LuckNote[] {
  const places = throws.filter(
    ({ game, frame }, at) => throws.findIndex((one) => one.game === game && one.frame === frame) === at,
  )
  return places.flatMap(({ game, frame }) => {
    const inFrame = throws.filter((one) => one.game === game && one.frame === frame)
    return KINDS.flatMap(([kind, term]): LuckNote[] => {
      const luckPins = inFrame.reduce((sum, { ledger }) => sum + ledger[term], 0)
      if (Math.abs(luckPins) <= NOTED_LUCK_PINS) return []
      const most = inFrame.reduce((a, b) => (b.ledger[term] * luckPins > a.ledger[term] * luckPins ? b : a))
      return [{ game, frame, kind, luckPins, index: most.index }]
    })
  })
}
