import { type Claim, pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, mendedByBest, type TagContext, type Told } from './tag-context.js'

/** Throws whose speed lost pins. */
export const wrongSpeed: Family = { claims, tell }

function claims(context: TagContext): Claim[] {
  return chargedFirstBalls(context).map((reading) => ({
    kind: 'wrong-speed',
    reading,
    group: `speed ${reading.verdict.best.aim.speedStep}`,
    explains: { speed: 1 },
  }))
}

function tell({ dearest }: Told) {
  return {
    evidence: [
      pinsEvidence('throw-cost', dearest.claim.reading.verdict.givenAwayPins),
      pinsEvidence('speed-part', dearest.pins),
    ],
    ...mendedByBest(dearest),
  }
}
