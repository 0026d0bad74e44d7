import type { FirstBallReading } from '../reading/reading.js'
import { framesWords, pinsWords } from './choice-words.js'
import { type Candidate, pinsEvidence } from './tag.js'
import { alike, candidate, firstBalls, type TagContext } from './tag-context.js'

/** Throws of the opening frames that taught less than another that would have cost about as little. */
export function skippedProbe(context: TagContext): Candidate[] {
  const untaught = firstBalls(context).filter(
    ({ lessonLostPins, verdict }) =>
      verdict.givenAwayPins > 0 &&
      lessonLostPins > verdict.tooCloseToCallPins &&
      verdict.lostPins - lessonLostPins <= verdict.tooCloseToCallPins,
  )
  return alike(untaught, () => '').map((throws) =>
    candidate('skipped-a-probe', throws, lessonLost, (told, pins) => ({
      evidence: [
        pinsEvidence('lost on later throws by the poorer lesson', pins),
        pinsEvidence('what the first of these throws would teach, a later throw', told[0].verdict.teachingPins ?? 0),
      ],
      words: `${framesWords(told.map(({ spot }) => spot.frame))}: another throw would have told more about the oil, and that is worth more while most of the block is to come. About ${pinsWords(pins)}.`,
      practise:
        'In practice and the first two frames choose, among lines of about equal worth, the one whose result would differ most between the patterns it could be.',
    })),
  )
}

const lessonLost = ({ lessonLostPins }: FirstBallReading): number => lessonLostPins
