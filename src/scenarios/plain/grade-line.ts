import { gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'

const FAIR_LABEL = 'by what could be known'

/** The grade of a choice, before it is thrown; null in practice, which costs nothing. */
export function gradeOf(state: BlockState, decision: Decision): PricedFairGrade | null {
  if (state.spot?.phase !== 'game') return null
  const grade = gradeFair(state, decision)
  return grade.kind === 'practice' ? null : grade
}

/** What a choice gives away by what had been shown. */
export function gradeLine({ givenAwayPins }: PricedFairGrade): string {
  const verdict =
    givenAwayPins < 0.05 ? 'gives away nothing worth calling' : `gives away ${givenAwayPins.toFixed(1)} pins`
  return `This choice ${verdict} (${FAIR_LABEL}).`
}
