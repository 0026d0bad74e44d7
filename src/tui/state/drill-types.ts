import type { Drill, DrillPosition } from '../../scenarios/drills/load-drill.js'
import type { FairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { Decision } from '../../sim/world/block/types.js'

/** What was answered at one position of a drill. */
export interface DrillAnswered {
  readonly position: DrillPosition
  readonly throws: readonly {
    readonly decision: Decision
    /** As in a block being played. */
    readonly grade: FairGrade | null | undefined
    readonly standing: number
  }[]
}

/** A drill being played: which position, and what was answered before. */
export interface DrillPlay {
  readonly drill: Drill
  readonly place: number
  readonly answered: readonly DrillAnswered[]
}

export const positionOf = ({ drill, place }: DrillPlay): DrillPosition => drill.positions[place]!
