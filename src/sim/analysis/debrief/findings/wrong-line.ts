import { withParts } from '../reading/part-shares.js'
import type { FirstBallReading } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Claim, pinsEvidence, type TagKind } from './tag.js'
import { chargedFirstBalls, type Family, firstBallOf, framesOf, type TagContext, type Told } from './tag-context.js'

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

const WORDS: Readonly<Record<LineKind, string>> = {
  'wrong-feet': 'the slide was the costly part',
  'wrong-target': 'the target was the costly part',
  'wrong-line': 'slide and target together sent the ball off the good line',
}

const PRACTISE: Readonly<Record<LineKind, string>> = {
  'wrong-feet':
    'Keep one target and walk the feet across in single boards over a few practice throws; note where each comes in. Three boards at the pins for a board of feet is the geometry; what is missing from it is the oil.',
  'wrong-target':
    'Keep the feet and change the target by single boards over a few practice throws; note where the ball turns and where it comes in.',
  'wrong-line':
    'Say where the ball should turn before choosing feet and target; then choose the pair that takes it there. Check with the next throw which of the two was off.',
}

function tell({ told, dearest, pins }: Told, { setup }: TagContext) {
  const reading = firstBallOf(dearest)
  const kind = kindOf(reading)
  const { decision, verdict, shares } = reading
  const better = withParts(decision, verdict.best, ['slide', 'target'])
  const change = changeWords(decision, better, setup.bag, setup.bowler.hand)
  const isAll = changeWords(better, verdict.best, setup.bag, setup.bowler.hand) === 'the same again'
  return {
    evidence: [
      pinsEvidence('that throw cost', verdict.givenAwayPins),
      ...(['slide', 'target'] as const)
        .filter((part) => (shares?.[part] ?? 0) > 0)
        .map((part) => pinsEvidence(`of that by the ${part}`, shares?.[part] ?? 0)),
    ],
    words: `${framesWords(framesOf(told))}: ${WORDS[kind]}; ${told.length > 1 ? `in ${framesWords([reading.spot.frame]).toLowerCase()} ` : ''}${change} ${isAll ? 'was as good as any' : 'was part of what was as good as any'}. About ${pinsWords(pins)}.`,
    practise: PRACTISE[kind],
  }
}
