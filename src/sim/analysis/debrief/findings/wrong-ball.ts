import type { FirstBallReading } from '../reading/reading.js'
import { ballName, framesWords, pinsWords } from './choice-words.js'
import { type Candidate, pinsEvidence } from './tag.js'
import { alike, candidate, counts, dearestOf, firstBalls, type TagContext, type Telling } from './tag-context.js'

/** Throws of a game with one ball whose best line was worth less than another ball's. */
export function wrongBall(context: TagContext): Candidate[] {
  const wrong = firstBalls(context).filter(isWrong)
  return alike(wrong, ({ decision }) => decision.ballId).map((throws) =>
    candidate('wrong-ball', throws, savedByBall, (told, pins) => tell(told, pins, context)),
  )
}

function isWrong(reading: FirstBallReading): boolean {
  const { nearest, ballLostPins, verdict, decision } = reading
  return (
    counts(nearest, reading) && nearest.decision.ballId !== decision.ballId && ballLostPins > verdict.tooCloseToCallPins
  )
}

/** The ball's part of the gap: no more than the gap itself. */
function savedByBall({ ballLostPins, nearest }: FirstBallReading): number {
  return Math.min(ballLostPins, nearest?.saved.pins ?? 0)
}

function tell(told: readonly FirstBallReading[], pins: number, { setup }: TagContext): Telling {
  const dearest = dearestOf(told, savedByBall)
  const better = ballName(dearest.nearest?.decision.ballId ?? dearest.verdict.best.ballId, setup.bag)
  const thrown = ballName(dearest.decision.ballId, setup.bag)
  return {
    evidence: [
      pinsEvidence(`the ${thrown}'s best line is behind the best of all by at most`, dearest.ballLostPins),
      pinsEvidence(
        `the ${better} on its nearest good line was ahead of that throw by`,
        dearest.nearest?.saved.pins ?? 0,
      ),
    ],
    words: `${framesWords(told.map(({ spot }) => spot.frame))}: no line of the ${thrown} was as good as one of the ${better}. About ${pinsWords(pins)}.`,
    practise:
      'Before the first frame, name for each ball of the bag where it would turn and how it would come in; throw the one that needs the least help from the oil. Ask again whenever the ball comes in lighter or higher than called.',
  }
}
