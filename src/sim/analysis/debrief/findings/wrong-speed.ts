import { framesWords, pinsWords } from './choice-words.js'
import type { Claim } from './tag.js'
import { pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, framesOf, type TagContext, type Told } from './tag-context.js'

/** Throws whose speed lost pins. */
export const wrongSpeed: Family = { claims, tell }

const SPEEDS = ['softer', 'the usual speed', 'firmer'] as const

function claims(context: TagContext): Claim[] {
  return chargedFirstBalls(context).map((reading) => ({
    kind: 'wrong-speed',
    reading,
    group: `speed ${reading.verdict.best.aim.speedStep}`,
    explains: { speed: 1 },
  }))
}

function tell({ told, dearest, pins }: Told) {
  const { verdict } = dearest.claim.reading
  return {
    evidence: [
      pinsEvidence('that throw cost', verdict.givenAwayPins),
      pinsEvidence('of that by the speed', dearest.pins),
    ],
    words: `${framesWords(framesOf(told))}: the speed was the costly part; ${SPEEDS[verdict.best.aim.speedStep + 1]} was as good as any. About ${pinsWords(pins)}.`,
    practise:
      'Call the entry before a softer and a firmer throw on the same line, and compare. Speed off the usual also widens the misses: weigh both.',
  }
}
