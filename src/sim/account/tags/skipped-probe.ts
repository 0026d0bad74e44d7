import { framesWords, pinsWords } from '../choice-words.js'
import type { FirstBallReading } from '../reading.js'
import { type Candidate, pinsEvidence } from '../tag.js'
import { candidate, firstBalls, type TagContext } from './tag-context.js'

/** Opening throws that taught much less than another that was as cheap. */
export function skippedProbe(context: TagContext): Candidate[] {
  return firstBalls(context)
    .filter((reading) => untaught(reading) > reading.verdict.tooCloseToCallPins)
    .map((reading) =>
      candidate('skipped-a-probe', [reading], untaught, ([{ spot, probe }], pins) => ({
        evidence: [
          pinsEvidence('what the throw made would teach', probe?.choicePins ?? 0),
          pinsEvidence('what the most telling good throw would teach', probe?.bestPins ?? 0),
        ],
        words: `${framesWords([spot.frame])}: another throw cost no more and would have told more about the oil. About ${pinsWords(pins)} over the rest of the block.`,
        practise:
          'In practice and the first two frames choose, among lines of about equal worth, the one whose result would differ most between the patterns it could be.',
      })),
    )
}

function untaught({ probe }: FirstBallReading): number {
  return probe ? probe.bestPins - probe.choicePins : 0
}
