import { isSame } from '../ledger/throw-worths.js'
import type { Innovation } from '../reading/innovation.js'
import type { FirstBallReading, Staying } from '../reading/reading.js'
import { boardsEvidence, type Claim, type Evidence, type PricedClaim, pinsEvidence, shareEvidence } from './tag.js'
import {
  chargedFirstBalls,
  type Family,
  firstBallOf,
  firstBalls,
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
  tell: (finding) => {
    const { kind } = finding.dearest.claim
    if (kind === 'blamed-the-lane') return tellBlame(finding)
    return kind === 'moved-too-early' ? tellEarly(finding) : tellStale(finding)
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

function tellStale({ told, pins }: Told): Telling {
  const first = firstBallOf(told[0])
  const last = firstBallOf(told[told.length - 1])
  return {
    evidence: [
      pinsEvidence('throws-cost', pins),
      { what: 'throws-on-the-line', value: told.length, unit: 'throws' },
      ...innovationEvidence(first.staying?.innovation ?? null),
    ],
    at: last.index,
    before: first.staying?.index ?? null,
    mend: last.verdict.best,
    mendsAll: true,
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

function tellBlame(told: Told): Telling {
  const { record } = movedOf(told.dearest).staying
  const { evidence, ...early } = tellEarly(told)
  const offBoards = record.observation.arrowsBoard - record.decision.aim.targetBoard
  return { evidence: [...evidence, boardsEvidence('off-the-target', offBoards)], ...early }
}

/** The line that was left is the mend: it cost less than the one it was left for. */
function tellEarly({ dearest, pins }: Told): Telling {
  const { staying, index } = movedOf(dearest)
  return {
    evidence: [pinsEvidence('staying-would-have-saved', pins), ...innovationEvidence(staying.innovation)],
    at: index,
    before: staying.index,
    mend: staying.decision,
    mendsAll: staying.chargedPins === 0,
  }
}

const surpriseOf = (innovation: Innovation | null): number =>
  innovation ? innovation.shownBoard - innovation.predictedBoard : 0

const isSurprise = (innovation: Innovation): boolean => Math.abs(surpriseOf(innovation)) >= LEAST_SURPRISE_BOARDS

function innovationEvidence(innovation: Innovation | null): Evidence[] {
  if (!innovation) return []
  return [
    boardsEvidence('off-the-expected-entry', surpriseOf(innovation)),
    shareEvidence('down-to-the-throw', innovation.deliveryShare),
    shareEvidence('down-to-the-lane', 1 - innovation.deliveryShare),
  ]
}
