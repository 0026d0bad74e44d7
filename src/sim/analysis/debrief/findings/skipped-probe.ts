import { type Claim, pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, mendedByBest, type TagContext, type Told } from './tag-context.js'

/** Throws that taught less than another that would have cost about as little. */
export const skippedProbe: Family = { claims, tell }

function claims(context: TagContext): Claim[] {
  return chargedFirstBalls(context).map((reading) => ({
    kind: 'skipped-a-probe',
    reading,
    group: 'probe',
    explains: { lesson: 1 },
  }))
}

function tell({ dearest, pins }: Told) {
  return { evidence: [pinsEvidence('lesson-lost', pins)], ...mendedByBest(dearest) }
}
