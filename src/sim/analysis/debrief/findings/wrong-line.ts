import { isSame } from '../ledger/throw-worths.js'
import { withParts } from '../reading/part-shares.js'
import type { FirstBallReading } from '../reading/reading.js'
import { type Claim, pinsEvidence, type TagKind } from './tag.js'
import { chargedFirstBalls, type Family, firstBallOf, type TagContext, type Told } from './tag-context.js'

/** Throws whose slide or target lost pins; those off to one side together. */
export const wrongLine: Family = { claims, tell }

/** A part is named alone when its share is nearly all of the line's. */
const ALONE = 0.7

function claims(context: TagContext): Claim<FirstBallReading>[] {
  return chargedFirstBalls(context).map((reading) => ({
    kind: kindOf(reading),
    reading,
    group: `line ${sideOfGoodLine(reading)}`,
    explains: { slide: 1, target: 1 },
  }))
}

type LineKind = Extract<TagKind, 'wrong-feet' | 'wrong-target' | 'wrong-line'>

function kindOf({ shares }: FirstBallReading): LineKind {
  const { slide, target } = shares ?? { slide: 0, target: 0 }
  if (slide >= ALONE * (slide + target)) return 'wrong-feet'
  return target >= ALONE * (slide + target) ? 'wrong-target' : 'wrong-line'
}

/** Throws with one ball on one lane from which the feet, or else the target, had to go the same way. */
function sideOfGoodLine({ spot, decision: { ballId, aim }, verdict }: FirstBallReading): string {
  const { feetBoard, targetBoard } = verdict.best.aim
  const way = feetBoard === aim.feetBoard ? targetBoard - aim.targetBoard : feetBoard - aim.feetBoard
  return `${spot.lane} ${ballId} ${Math.sign(way)}`
}

function tell({ dearest }: Told) {
  const { decision, verdict, shares, index, staying } = firstBallOf(dearest)
  const mend = withParts(decision, verdict.best, ['slide', 'target'])
  return {
    evidence: [
      pinsEvidence('throw-cost', verdict.givenAwayPins),
      ...(['slide', 'target'] as const)
        .filter((part) => (shares?.[part] ?? 0) > 0)
        .map((part) => pinsEvidence(`${part}-part`, shares?.[part] ?? 0)),
    ],
    at: index,
    before: staying?.index ?? null,
    mend,
    mendsAll: isSame(mend, verdict.best),
  }
}
