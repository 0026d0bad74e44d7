import type { SpareReading } from '../reading/reading.js'
import { type Claim, pinsEvidence } from './tag.js'
import { type Family, mendedByBest, type TagContext, type Told } from './tag-context.js'

/** Spare throws whose ball, or whose line, lost pins; those with one wrong ball, or at one leave, together. */
export const spareChoice: Family = { claims, tell }

function claims({ readings }: TagContext): Claim[] {
  return readings
    .filter((reading): reading is SpareReading => reading.kind === 'spare' && reading.shares !== null)
    .flatMap((reading): Claim[] => [
      {
        kind: 'spare-ball',
        reading,
        group: `spare ball ${reading.decision.ballId} ${reading.decision.release}`,
        explains: { ball: 1 },
      },
      { kind: 'spare-line', reading, group: `spare line ${reading.standing}`, explains: { line: 1 } },
    ])
}

function tell({ dearest }: Told) {
  const { reading, kind } = dearest.claim
  return {
    evidence: [
      pinsEvidence('throw-cost', reading.verdict.givenAwayPins),
      pinsEvidence(kind === 'spare-ball' ? 'ball-part' : 'line-part', dearest.pins),
    ],
    ...mendedByBest(dearest),
  }
}
