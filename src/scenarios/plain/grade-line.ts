import { gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'

export const FAIR_LABEL = 'by what could be known'

/** What a choice gives away by what had been shown, said before it is thrown; null in practice, which costs nothing. */
export function gradeLine(state: BlockState, decision: Decision): string | null {
  if (state.spot?.phase !== 'game') return null
  const { givenAwayPins } = gradeFair(state, decision)
  if (givenAwayPins === null) return null
  const verdict =
    givenAwayPins < 0.05 ? 'gives away nothing worth calling' : `gives away ${givenAwayPins.toFixed(1)} pins`
  return `This choice ${verdict} (${FAIR_LABEL}).`
}
