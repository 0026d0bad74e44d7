import type { BlockState, Decision } from '../../sim/block/types.js'
import { gradeKnown } from '../../sim/decision/grade.js'
import { calledPins } from '../called-pins.js'

/** What a choice gives away, said before it is thrown; null in practice, which costs nothing. */
export function gradeLine(state: BlockState, decision: Decision): string | null {
  if (state.spot?.phase !== 'game') return null
  const grade = gradeKnown(state, decision)
  const pins = calledPins(grade)
  const verdict = pins === 0 ? 'gives away nothing worth calling' : `gives away ${pins.toFixed(1)} pins`
  return `This choice ${verdict} (${grade.label}).`
}
