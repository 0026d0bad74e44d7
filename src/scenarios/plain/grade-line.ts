import { gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import { gradeSentence, gradeWords } from '../words/grade-words.js'

/** The grade of a choice, before it is thrown; null in practice, which costs nothing. */
export function gradeOf(state: BlockState, decision: Decision): PricedFairGrade | null {
  if (state.spot?.phase !== 'game') return null
  const grade = gradeFair(state, decision)
  return grade.kind === 'practice' ? null : grade
}

/** What a choice costs, why, and what to try. */
export const gradeLine = (grade: PricedFairGrade, decision: Decision, before: BlockState): string =>
  gradeSentence(gradeWords(grade, decision, before))
