import type { BlockState, Decision, ThrowRecord } from '../sim/block/types.js'
import { gradeKnown, type KnownGrade } from '../sim/decision/grade.js'
import { calledPins } from './called-pins.js'
import type { Replay } from './replay.js'

/** One choice of a block with its price; choices of practice have none. */
export interface DebriefedThrow {
  readonly record: ThrowRecord
  readonly grade: KnownGrade | null
  readonly calledPins: number
}

/** A whole block looked back on, the oil lifted. */
export interface Debrief {
  readonly throws: readonly DebriefedThrow[]
  readonly firstBallPins: number
  readonly sparePins: number
  readonly begun: BlockState
  readonly ended: BlockState
}

/** Prices every choice of a replayed block. */
export function debriefOf({ states }: Replay): Debrief {
  const ended = states[states.length - 1]
  const throws = ended.throws.map((record, index) => debriefThrow(states[index], record, record.decision))
  const pinsOf = (kind: KnownGrade['kind']): number =>
    throws.reduce((sum, one) => sum + (one.grade?.kind === kind ? one.calledPins : 0), 0)
  return { throws, firstBallPins: pinsOf('first-ball'), sparePins: pinsOf('spare'), begun: states[0], ended }
}

function debriefThrow(before: BlockState, record: ThrowRecord, decision: Decision): DebriefedThrow {
  if (record.spot.phase === 'practice') return { record, grade: null, calledPins: 0 }
  const grade = gradeKnown(before, decision)
  return { record, grade, calledPins: calledPins(grade) }
}
