import { type Claim, pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, mendedByBest, type TagContext, type Told } from './tag-context.js'

/** Throws of a game with one ball where another would have been the better one. */
export const wrongBall: Family = { claims, tell }

function claims(context: TagContext): Claim[] {
  return chargedFirstBalls(context).map((reading) => ({
    kind: 'wrong-ball',
    reading,
    group: `ball ${reading.decision.ballId}`,
    explains: { ball: 1 },
  }))
}

function tell({ dearest }: Told) {
  return {
    evidence: [
      pinsEvidence('throw-cost', dearest.claim.reading.verdict.givenAwayPins),
      pinsEvidence('ball-part', dearest.pins),
    ],
    ...mendedByBest(dearest),
  }
}
