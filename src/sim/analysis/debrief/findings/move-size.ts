import type { FirstBallReading } from '../reading/reading.js'
import { type Claim, pinsEvidence, shareEvidence, type TagKind } from './tag.js'
import { chargedFirstBalls, type Family, firstBallOf, mendedByBest, type TagContext, type Told } from './tag-context.js'

/** A move that goes less than this share of the way was too small, one that goes beyond the other too far. */
const TOO_SMALL = 0.5
const TOO_FAR = 1.5
/** Cosine between the move made and the move to make, from which on the direction was right; below its negative, the other way. */
const SAME_DIRECTION = 0.5

/** Moves that were called for but went not far enough, too far or the other way. */
export const moveSize: Family = { claims, tell }

function claims(context: TagContext): Claim[] {
  return chargedFirstBalls(context).flatMap((reading) => {
    const move = moveOf(reading)
    return move ? [{ kind: move.kind, reading, group: `move ${reading.index}`, explains: { slide: 1, target: 1 } }] : []
  })
}

type MoveKind = Extract<TagKind, 'move-too-small' | 'move-too-far' | 'moved-the-wrong-way'>

interface Move {
  readonly kind: MoveKind
  /** How much of the way was gone; below 0 the other way. */
  readonly share: number
}

function moveOf({ staying, decision, verdict: { best } }: FirstBallReading): Move | null {
  if (!staying || staying.decision.ballId !== decision.ballId || best.ballId !== decision.ballId) return null
  if (staying.chargedPins === 0) return null
  const made = between(staying.decision.aim, decision.aim)
  const needed = between(staying.decision.aim, best.aim)
  const along = made.feet * needed.feet + made.target * needed.target
  const madeSquare = made.feet * made.feet + made.target * made.target
  const neededSquare = needed.feet * needed.feet + needed.target * needed.target
  if (madeSquare === 0 || neededSquare === 0) return null
  const cosine = along / Math.sqrt(madeSquare * neededSquare)
  if (Math.abs(cosine) < SAME_DIRECTION) return null
  const share = along / neededSquare
  if (share >= TOO_SMALL && share <= TOO_FAR) return null
  return { kind: share < 0 ? 'moved-the-wrong-way' : share < TOO_SMALL ? 'move-too-small' : 'move-too-far', share }
}

function between(from: { feetBoard: number; targetBoard: number }, to: { feetBoard: number; targetBoard: number }) {
  return { feet: to.feetBoard - from.feetBoard, target: to.targetBoard - from.targetBoard }
}

function tell({ dearest }: Told) {
  const reading = firstBallOf(dearest)
  const move = moveOf(reading)
  if (!move || !reading.staying) throw new RangeError('No move was made here.')
  return {
    evidence: [
      pinsEvidence('throw-cost', reading.verdict.givenAwayPins),
      shareEvidence('made-of-the-move', move.share),
      pinsEvidence('staying-would-have-cost', reading.staying.chargedPins),
    ],
    ...mendedByBest(dearest),
  }
}
