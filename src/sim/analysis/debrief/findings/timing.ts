import { isSame } from '../ledger/throw-worths.js'
import type { Innovation } from '../reading/innovation.js'
import type { FirstBallReading, Staying } from '../reading/reading.js'
import { boards, changeWords, framesWords, lineWords, pinsWords, sideOf } from './choice-words.js'
import { boardsEvidence, type Candidate, type Evidence, pinsEvidence, shareEvidence } from './tag.js'
import {
  alike,
  candidate,
  counts,
  dearestOf,
  firstBalls,
  runsOf,
  type TagContext,
  type Telling,
} from './tag-context.js'

/** A surprise smaller than this, in boards at the pins, is none. */
const LEAST_SURPRISE_BOARDS = 0.5
/** Above this share of the delivery a surprise was the throw, below the other it was the lane. */
const MOSTLY_THROW = 0.7
const MOSTLY_LANE = 0.3
/** A board of target moves a ball four at the pins, a board of feet three the other way (similar triangles, 15 and 60 ft). */
const PINS_PER_TARGET = 4
const PINS_PER_FEET = 3

/** Lines kept after they had stopped being good, and lines left before they had. */
export function timing(context: TagContext): Candidate[] {
  return [...stayedTooLong(context), ...leftTooSoon(context)]
}

function stayedTooLong(context: TagContext): Candidate[] {
  const all = firstBalls(context)
  const wentStale = (reading: FirstBallReading): boolean => {
    const { staying } = reading
    return staying !== null && isSame(staying.decision, reading.decision) && counts(reading.nearest, reading)
  }
  const lanes = new Set(all.map(({ spot }) => spot.lane))
  return [...lanes].flatMap((lane) => {
    const here = all.filter(({ spot }) => spot.lane === lane)
    return runsOf(here, (a, b) => wentStale(a) && wentStale(b))
      .filter(([first]) => wentStale(first) && wasGoodBefore(first, here))
      .map((run) => staleCandidate(run, context))
  })
}

/** The same line was no worse than any when it was thrown the time before. */
function wasGoodBefore({ staying, index }: FirstBallReading, here: readonly FirstBallReading[]): boolean {
  const before = here.findLast((other) => other.index < index)
  return before !== undefined && staying !== null && before.verdict.givenAwayPins === 0
}

function staleCandidate(run: readonly FirstBallReading[], context: TagContext): Candidate {
  const innovation = run[0].staying?.innovation ?? null
  const wasTold = innovation !== null && isSurprise(innovation) && innovation.deliveryShare < MOSTLY_LANE
  return candidate(
    wasTold ? 'missed-a-change' : 'moved-too-late',
    run,
    ({ nearest }) => nearest?.saved.pins ?? 0,
    (told, pins) => tellStale(told, pins, wasTold, context),
  )
}

function tellStale(told: readonly FirstBallReading[], pins: number, wasTold: boolean, { setup }: TagContext): Telling {
  const [first] = told
  const last = told[told.length - 1]
  const innovation = first.staying?.innovation ?? null
  const change = last.nearest ? changeWords(last.decision, last.nearest.decision, setup.bag, setup.bowler.hand) : ''
  const frames = framesWords(told.map(({ spot }) => spot.frame))
  const missed = `${frames}: the throw before came in ${offWords(innovation)}, and most of that was the lane`
  const late = `${frames}: ${lineWords(first.decision)} had been good and was no longer`
  return {
    evidence: [
      pinsEvidence('over these throws the nearest choice that was as good would have saved', pins),
      { words: 'thrown on the line after it had stopped being good:', value: told.length, unit: 'throws' },
      ...(innovation ? innovationEvidence(innovation) : []),
    ],
    words: `${wasTold ? missed : late}; ${change} was as good as any by the end. About ${pinsWords(pins)}.`,
    practise: wasTold
      ? 'Call the entry before every throw. When a ball that crossed its target comes in off the call, write down by how much; twice the same way is a move.'
      : 'After each throw ask whether the same throw again would still be the first choice. Set a limit beforehand: so many boards off at the pins on a good throw, and the feet go.',
  }
}

function leftTooSoon(context: TagContext): Candidate[] {
  const left = firstBalls(context).filter(leftABetterLine)
  const blamed = left.filter(blamedTheLane)
  const early = left.filter((one) => !blamedTheLane(one) && lostByStaying(one) <= one.verdict.tooCloseToCallPins)
  return [
    ...alike(blamed, () => '').map((throws) =>
      candidate('blamed-the-lane', throws, savedByStaying, (told, pins) => tellBlame(told, pins, context)),
    ),
    ...alike(early, () => '').map((throws) => candidate('moved-too-early', throws, savedByStaying, tellEarly)),
  ]
}

type Moved = FirstBallReading & { readonly staying: Staying }

function leftABetterLine(reading: FirstBallReading): reading is Moved {
  const { staying, verdict, decision } = reading
  if (!staying || isSame(staying.decision, decision)) return false
  return staying.stands && staying.saved.pins > verdict.tooCloseToCallPins
}

const savedByStaying = ({ staying }: Moved): number => staying.saved.pins
const lostByStaying = ({ staying }: Moved): number => staying.lostPins

function blamedTheLane({ staying: { innovation, decision: last }, decision }: Moved): boolean {
  if (!innovation || !isSurprise(innovation) || innovation.deliveryShare <= MOSTLY_THROW) return false
  const feet = decision.aim.feetBoard - last.aim.feetBoard
  const target = decision.aim.targetBoard - last.aim.targetBoard
  const answered = PINS_PER_TARGET * target - PINS_PER_FEET * feet
  return answered * surpriseOf(innovation) < 0 && innovation.deliveryBoards * surpriseOf(innovation) > 0
}

function tellBlame(told: readonly Moved[], pins: number, { setup }: TagContext): Telling {
  const dearest = dearestOf(told, savedByStaying)
  const { innovation, record, decision: last } = dearest.staying
  const { hand } = setup.bowler
  const arrows = record.observation.arrowsBoard - record.decision.aim.targetBoard
  const crossed =
    Math.abs(arrows) >= 1
      ? `it crossed the arrows ${boards(arrows)} ${sideOf(arrows, hand)} of the target`
      : `it crossed the arrows within a board of the target, and a board there is ${PINS_PER_TARGET} at the pins`
  const move = changeWords(last, dearest.decision, setup.bag, hand)
  return {
    evidence: [
      pinsEvidence('over these throws staying would have saved', pins),
      ...(innovation ? innovationEvidence(innovation) : []),
      boardsEvidence('crossed the arrows off the target by', arrows),
    ],
    words: `${framesWords([dearest.spot.frame])}: the throw before came in ${offWords(innovation)}, most of it the throw itself: ${crossed}. The move that answered it (${move}) left the better line.${andOthers(told, dearest)} About ${pinsWords(pins)}.`,
    practise:
      'After an off result first say what left the hand: board at the arrows, speed, turn. If that was off, throw the same again before moving.',
  }
}

function tellEarly(told: readonly Moved[], pins: number): Telling {
  const dearest = dearestOf(told, savedByStaying)
  const { staying } = dearest
  return {
    evidence: [
      pinsEvidence('over these throws staying would have saved', pins),
      pinsEvidence('staying would have lost against the best', staying.lostPins),
      ...(staying.innovation ? innovationEvidence(staying.innovation) : []),
    ],
    words: `${framesWords([dearest.spot.frame])}: ${lineWords(staying.decision)} was still as good as any; the new choice was not.${andOthers(told, dearest)} About ${pinsWords(pins)}.`,
    practise:
      'Name the reason for a move before making it: what the last ball did at the arrows, where it turned, how it came in. No reason, no move.',
  }
}

function andOthers(told: readonly Moved[], dearest: Moved): string {
  const others = told.filter((one) => one !== dearest)
  if (others.length === 0) return ''
  return ` The same in ${framesWords(others.map(({ spot }) => spot.frame)).toLowerCase()}.`
}

/** How far off, and which way as a bowler says it. */
function offWords(innovation: Innovation | null): string {
  const surprise = surpriseOf(innovation)
  return `about ${boards(surprise)} ${surprise > 0 ? 'higher' : 'lighter'} than was to be expected`
}

const surpriseOf = (innovation: Innovation | null): number =>
  innovation ? innovation.shownBoard - innovation.predictedBoard : 0

const isSurprise = (innovation: Innovation): boolean => Math.abs(surpriseOf(innovation)) >= LEAST_SURPRISE_BOARDS

function innovationEvidence(innovation: Innovation): Evidence[] {
  return [
    boardsEvidence('the throw before came in off the expected entry by', surpriseOf(innovation)),
    shareEvidence('of that down to the throw', innovation.deliveryShare),
    shareEvidence('of that down to the lane', 1 - innovation.deliveryShare),
  ]
}
