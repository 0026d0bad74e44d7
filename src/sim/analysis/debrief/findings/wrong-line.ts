import type { Aim } from '../../../world/bowler/release.js'
import type { FirstBallReading, Instead } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Candidate, pinsEvidence, type TagKind } from './tag.js'
import { alike, candidate, counts, dearestOf, firstBalls, type TagContext, type Telling } from './tag-context.js'

/** A part is named alone when its share of the gain is about all of it; above that, others spoil what it gains. */
const ALONE: readonly [number, number] = [0.7, 1.3]

/** Throws whose feet, target or speed lost pins with the ball that was chosen; those off to one side together. */
export function wrongLine(context: TagContext): Candidate[] {
  const faults = firstBalls(context).flatMap((reading) => {
    const fault = faultOf(reading)
    return fault ? [{ ...reading, fault }] : []
  })
  return alike(faults, sideOfGoodLine).map((throws) =>
    candidate(dearestOf(throws, savedByLine).fault.kind, throws, savedByLine, (told, pins) =>
      tell(told, pins, context),
    ),
  )
}

type LineKind = Extract<TagKind, 'wrong-feet' | 'wrong-target' | 'wrong-speed' | 'wrong-line'>
interface Fault {
  readonly kind: LineKind
  readonly instead: Instead
}
type Faulty = FirstBallReading & { readonly fault: Fault }

function faultOf(reading: FirstBallReading): Fault | null {
  const { nearest, nearestSameBall, decision } = reading
  const isRightBall = counts(nearest, reading) && nearest.decision.ballId === decision.ballId
  const instead = isRightBall ? nearest : nearestSameBall
  return counts(instead, reading) ? { kind: kindOf(reading, instead), instead } : null
}

const KIND_OF_PART = { feet: 'wrong-feet', target: 'wrong-target', speed: 'wrong-speed' } as const

/** The one part that differs, or the one that gains most of what is gained; else the line as a whole. */
function kindOf({ shares, decision: { aim }, nearest }: FirstBallReading, instead: Instead): LineKind {
  const better = instead.decision.aim
  const differ = (['feet', 'target', 'speed'] as const).filter((part) => partOf(aim, part) !== partOf(better, part))
  if (differ.length === 1) return KIND_OF_PART[differ[0]]
  const alone =
    shares && instead === nearest
      ? differ.find((part) => {
          const share = shares[part] / instead.saved.pins
          return share >= ALONE[0] && share <= ALONE[1]
        })
      : undefined
  return alone ? KIND_OF_PART[alone] : 'wrong-line'
}

function partOf({ feetBoard, targetBoard, speedStep }: Aim, part: keyof typeof KIND_OF_PART): number {
  return { feet: feetBoard, target: targetBoard, speed: speedStep }[part]
}

const savedByLine = ({ fault }: Faulty): number => fault.instead.saved.pins

/** Throws with one ball on one lane from which the feet, or else the target, had to go the same way. */
function sideOfGoodLine({ spot, decision: { ballId, aim }, fault }: Faulty): string {
  const { feetBoard, targetBoard } = fault.instead.decision.aim
  const way = feetBoard === aim.feetBoard ? targetBoard - aim.targetBoard : feetBoard - aim.feetBoard
  return `${spot.lane} ${ballId} ${Math.sign(way)}`
}

const WORDS: Readonly<Record<LineKind, string>> = {
  'wrong-feet': 'the feet were the costly part',
  'wrong-target': 'the target was the costly part',
  'wrong-speed': 'the speed was the costly part',
  'wrong-line': 'feet and target together sent the ball off the good line',
}

const PRACTISE: Readonly<Record<LineKind, string>> = {
  'wrong-feet':
    'Keep one target and walk the feet across in single boards over a few practice throws; note where each comes in. Three boards at the pins for a board of feet is the geometry; what is missing from it is the oil.',
  'wrong-target':
    'Keep the feet and change the target by single boards over a few practice throws; note where the ball turns and where it comes in.',
  'wrong-speed':
    'Call the entry before a softer and a firmer throw on the same line, and compare. Speed off the usual also widens the misses: weigh both.',
  'wrong-line':
    'Say where the ball should turn before choosing feet and target; then choose the pair that takes it there. Check with the next throw which of the two was off.',
}

function tell(told: readonly Faulty[], pins: number, { setup }: TagContext): Telling {
  const dearest = dearestOf(told, savedByLine)
  const { kind, instead } = dearest.fault
  const change = changeWords(dearest.decision, instead.decision, setup.bag, setup.bowler.hand)
  const isBest = instead === dearest.nearest
  const shares = isBest ? dearest.shares : null
  return {
    evidence: [
      pinsEvidence('the nearest line that was as good would have saved', instead.saved.pins),
      ...(shares
        ? (['feet', 'target', 'speed'] as const)
            .filter((part) => shares[part] !== 0)
            .map((part) => pinsEvidence(`of that by the ${part}`, shares[part]))
        : []),
    ],
    words: `${framesWords(told.map(({ spot }) => spot.frame))}: ${WORDS[kind]}; ${told.length > 1 ? `in ${framesWords([dearest.spot.frame]).toLowerCase()} ` : ''}${change} was as good as any${isBest ? '' : ' with this ball'}. About ${pinsWords(pins)}.`,
    practise: PRACTISE[kind],
  }
}
