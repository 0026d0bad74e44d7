import { ballName, framesWords, pinsWords } from './choice-words.js'
import type { Claim } from './tag.js'
import { pinsEvidence } from './tag.js'
import { chargedFirstBalls, type Family, framesOf, type TagContext, type Told } from './tag-context.js'

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

function tell({ told, dearest, pins }: Told, { setup }: TagContext) {
  const { verdict, decision } = dearest.claim.reading
  const better = ballName(verdict.best.ballId, setup.bag)
  const thrown = ballName(decision.ballId, setup.bag)
  return {
    evidence: [
      pinsEvidence('that throw cost', verdict.givenAwayPins),
      pinsEvidence('of that by the ball', dearest.pins),
    ],
    words: `${framesWords(framesOf(told))}: the ${better} was the better ball, not the ${thrown}. About ${pinsWords(pins)}.`,
    practise:
      'Before the first frame, name for each ball of the bag where it would turn and how it would come in; throw the one that needs the least help from the oil. Ask again whenever the ball comes in lighter or higher than called.',
  }
}
