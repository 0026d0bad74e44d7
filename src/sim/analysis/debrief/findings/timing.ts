import { isSame } from '../ledger/throw-worths.js'
import type { Innovation } from '../reading/innovation.js'
import type { FirstBallReading, Staying } from '../reading/reading.js'
import { boards, changeWords, framesWords, lineWords, pinsWords, sideOf } from './choice-words.js'
import { boardsEvidence, type Claim, type Evidence, type PricedClaim, pinsEvidence, shareEvidence } from './tag.js'
import {
  chargedFirstBalls,
  type Family,
  firstBallOf,
  firstBalls,
  framesOf,
  runsOf,
  type TagContext,
  type Telling,
  type Told,
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
export const timing: Family = {
  claims: (context) => [...stayedTooLong(context), ...leftTooSoon(context)],
  tell: (finding, context) => {
    const { kind } = finding.dearest.claim
    if (kind === 'blamed-the-lane') return tellBlame(finding, context)
    return kind === 'moved-too-early' ? tellEarly(finding) : tellStale(finding, kind === 'missed-a-change', context)
  },
}

const WHOLE_CHOICE = { ball: 1, slide: 1, target: 1, speed: 1 } as const

function stayedTooLong({ readings }: TagContext): Claim[] {
  const all = firstBalls(readings)
  const wentStale = ({ staying, decision, verdict }: FirstBallReading): boolean =>
    staying !== null && isSame(staying.decision, decision) && verdict.givenAwayPins > 0
  const lanes = new Set(all.map(({ spot }) => spot.lane))
  return [...lanes].flatMap((lane) => {
    const here = all.filter(({ spot }) => spot.lane === lane)
    return runsOf(here, (a, b) => wentStale(a) && wentStale(b))
      .filter(([first]) => wentStale(first) && wasGoodBefore(first, here))
      .flatMap((run) => {
        const kind = wasTold(run[0].staying?.innovation ?? null) ? 'missed-a-change' : 'moved-too-late'
        return run.map((reading): Claim => ({ kind, reading, group: `stale ${run[0].index}`, explains: WHOLE_CHOICE }))
      })
  })
}

/** The same line cost nothing when it was thrown the time before. */
function wasGoodBefore({ index }: FirstBallReading, here: readonly FirstBallReading[]): boolean {
  const before = here.findLast((other) => other.index < index)
  return before !== undefined && before.verdict.givenAwayPins === 0
}

const wasTold = (innovation: Innovation | null): boolean =>
  innovation !== null && isSurprise(innovation) && innovation.deliveryShare < MOSTLY_LANE

function tellStale({ told, pins }: Told, isMissed: boolean, { setup }: TagContext): Telling {
  const first = firstBallOf(told[0])
  const last = firstBallOf(told[told.length - 1])
  const innovation = first.staying?.innovation ?? null
  const change = changeWords(last.decision, last.verdict.best, setup.bag, setup.bowler.hand)
  const frames = framesWords(framesOf(told))
  const missed = `${frames}: the throw before came in ${offWords(innovation)}, and most of that was the lane`
  const late = `${frames}: ${lineWords(first.decision)} had been good and was no longer`
  return {
    evidence: [
      pinsEvidence('these throws cost', pins),
      { words: 'thrown on the line after it had stopped being good:', value: told.length, unit: 'throws' },
      ...(innovation ? innovationEvidence(innovation) : []),
    ],
    words: `${isMissed ? missed : late}; ${change} was as good as any by the end. About ${pinsWords(pins)}.`,
    practise: isMissed
      ? 'Call the entry before every throw. When a ball that crossed its target comes in off the call, write down by how much; twice the same way is a move.'
      : 'After each throw ask whether the same throw again would still be the first choice. Set a limit beforehand: so many boards off at the pins on a good throw, and the feet go.',
  }
}

function leftTooSoon(context: TagContext): Claim[] {
  return chargedFirstBalls(context).flatMap((reading): Claim[] => {
    if (!leftABetterLine(reading)) return []
    const saved = (reading.verdict.givenAwayPins - reading.staying.chargedPins) / reading.verdict.givenAwayPins
    const explains = { ball: saved, slide: saved, target: saved, speed: saved }
    if (blamedTheLane(reading)) return [{ kind: 'blamed-the-lane', reading, group: 'blamed', explains }]
    return reading.staying.chargedPins === 0 ? [{ kind: 'moved-too-early', reading, group: 'early', explains }] : []
  })
}

type Moved = FirstBallReading & { readonly staying: Staying }

function leftABetterLine(reading: FirstBallReading): reading is Moved {
  const { staying, verdict, decision } = reading
  if (!staying || isSame(staying.decision, decision)) return false
  return verdict.givenAwayPins - staying.chargedPins > verdict.tooCloseToCallPins
}

function movedOf(one: PricedClaim): Moved {
  const reading = firstBallOf(one)
  if (!leftABetterLine(reading)) throw new RangeError('No better line was left here.')
  return reading
}

function blamedTheLane({ staying: { innovation, decision: last }, decision }: Moved): boolean {
  if (!innovation || !isSurprise(innovation) || innovation.deliveryShare <= MOSTLY_THROW) return false
  const feet = decision.aim.feetBoard - last.aim.feetBoard
  const target = decision.aim.targetBoard - last.aim.targetBoard
  const answered = PINS_PER_TARGET * target - PINS_PER_FEET * feet
  return answered * surpriseOf(innovation) < 0 && innovation.deliveryBoards * surpriseOf(innovation) > 0
}

function tellBlame({ told, dearest, pins }: Told, { setup }: TagContext): Telling {
  const { staying, decision, spot } = movedOf(dearest)
  const { innovation, record, decision: last } = staying
  const { hand } = setup.bowler
  const arrows = record.observation.arrowsBoard - record.decision.aim.targetBoard
  const crossed =
    Math.abs(arrows) >= 1
      ? `it crossed the arrows ${boards(arrows)} ${sideOf(arrows, hand)} of the target`
      : `it crossed the arrows within a board of the target, and a board there is ${PINS_PER_TARGET} at the pins`
  const move = changeWords(last, decision, setup.bag, hand)
  return {
    evidence: [
      pinsEvidence('over these throws staying would have saved', pins),
      ...(innovation ? innovationEvidence(innovation) : []),
      boardsEvidence('crossed the arrows off the target by', arrows),
    ],
    words: `${framesWords([spot.frame])}: the throw before came in ${offWords(innovation)}, most of it the throw itself: ${crossed}. The move that answered it (${move}) left the better line.${andOthers(told, dearest)} About ${pinsWords(pins)}.`,
    practise:
      'After an off result first say what left the hand: board at the arrows, speed, turn. If that was off, throw the same again before moving.',
  }
}

function tellEarly({ told, dearest, pins }: Told): Telling {
  const { staying, spot } = movedOf(dearest)
  return {
    evidence: [
      pinsEvidence('over these throws staying would have saved', pins),
      ...(staying.innovation ? innovationEvidence(staying.innovation) : []),
    ],
    words: `${framesWords([spot.frame])}: ${lineWords(staying.decision)} was still as good as any; the new choice was not.${andOthers(told, dearest)} About ${pinsWords(pins)}.`,
    practise:
      'Name the reason for a move before making it: what the last ball did at the arrows, where it turned, how it came in. No reason, no move.',
  }
}

function andOthers(told: readonly PricedClaim[], dearest: PricedClaim): string {
  const others = told.filter((one) => one !== dearest)
  if (others.length === 0) return ''
  return ` The same in ${framesWords(framesOf(others)).toLowerCase()}.`
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
