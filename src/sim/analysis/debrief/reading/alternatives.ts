import type { BlockSetup, Decision } from '../../../world/block/types.js'
import type { MomentPrices } from '../../grade/fair-grade.js'
import type { TrueOilPrices } from '../ledger/throw-worths.js'

/** A choice that was not made, against the one that was: above 0 it was worth more. */
export interface Alternative {
  readonly what: 'best-line-of-ball' | 'best' | 'move'
  readonly decision: Decision
  /** By what could be known: what the choice made costs, less what this one does. */
  readonly fairGainPins: number
  /** On the oil as it was. */
  readonly knownGainPins: number
}

/** Small moves one might have made instead: slide and target in boards, inwards above 0. */
const NEIGHBOUR_MOVES: readonly (readonly [slide: number, target: number])[] = [
  [2, 1],
  [-2, -1],
  [1, 0.5],
  [-1, -0.5],
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
]

export interface AlternativesAsked {
  readonly bag: BlockSetup['bag']
  readonly decision: Decision
  /** What the grade shows as the best. */
  readonly best: Decision
  readonly prices: MomentPrices
  readonly onTrueOil: TrueOilPrices
}

/**
 * The road not taken: the best that is shown, each ball on its best line, and the neighbouring moves with the ball that was
 * thrown, each at the one price it has from what had been seen and on the oil as it was. Nothing of them depends on what was
 * thrown or fell.
 */
export function alternativesOf({ bag, decision, best, prices, onTrueOil }: AlternativesAsked): Alternative[] {
  const { search, priceOf } = prices
  const knownWorth = onTrueOil.ofChoice
  const own = knownWorth(decision)
  const charged = priceOf(decision).chargedPins
  const against = (what: Alternative['what'], other: Decision): Alternative => ({
    what,
    decision: other,
    fairGainPins: charged - priceOf(other).chargedPins,
    knownGainPins: knownWorth(other) - own,
  })
  const balls = bag.flatMap((ball, ballIndex) => {
    const line = search.finalists.find((one) => one.ballIndex === ballIndex)
    return line ? [against('best-line-of-ball', { ballId: ball.id, aim: line.aim, release: 'strike' })] : []
  })
  const moves = NEIGHBOUR_MOVES.map(([slide, target]) =>
    against('move', {
      ...decision,
      aim: {
        ...decision.aim,
        feetBoard: decision.aim.feetBoard + slide,
        targetBoard: decision.aim.targetBoard + target,
      },
    }),
  )
  const shown = charged > 0 ? [against('best', best)] : []
  return [...shown, ...balls.sort((a, b) => b.fairGainPins - a.fairGainPins), ...moves]
}
