import type { BlockState, Decision } from '../../sim/block/types.js'
import { gradeKnown } from '../../sim/decision/grade.js'
import { FULL_RACK } from '../../sim/pins/leaves.js'

/** What a first ball's choice gives away, said before it is thrown; null for practice and for spares, which are not priced. */
export function gradeLine(state: BlockState, decision: Decision): string | null {
  if (state.spot?.phase !== 'game' || state.standing !== FULL_RACK) return null
  const { givenAwayPins, label } = gradeKnown(state, decision)
  return `This choice gives away ${givenAwayPins.toFixed(1)} pins (${label}).`
}
