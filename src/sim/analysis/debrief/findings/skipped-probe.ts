import { framesWords, pinsWords } from './choice-words.js'
import { type Claim, pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, framesOf, type TagContext, type Told } from './tag-context.js'

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

function tell({ told, dearest, pins }: Told) {
  return {
    evidence: [
      pinsEvidence('lost on later throws by the poorer lesson', pins),
      pinsEvidence(
        'what the dearest of these throws would teach, a later throw',
        dearest.claim.reading.verdict.teachingPins ?? 0,
      ),
    ],
    words: `${framesWords(framesOf(told))}: another throw would have told more about the oil, and that is worth more while throws are to come. About ${pinsWords(pins)}.`,
    practise:
      'While the oil is not known choose, among lines of about equal worth, the one whose result would differ most between the patterns it could be.',
  }
}
