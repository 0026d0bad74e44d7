import type { FirstBallReading } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Claim, pinsEvidence, shareEvidence, type TagKind } from './tag.js'
import { chargedFirstBalls, type Family, firstBallOf, type TagContext, type Told } from './tag-context.js'

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

const WENT: Readonly<Record<MoveKind, string>> = {
  'move-too-small': 'the right way, not far enough',
  'move-too-far': 'the right way, too far',
  'moved-the-wrong-way': 'the other way',
}

const PRACTISE: Readonly<Record<MoveKind, string>> = {
  'move-too-small':
    'Turn boards at the pins into boards of feet before moving, and make the whole move at once; the next throw tells whether it was too much.',
  'move-too-far':
    'Turn boards at the pins into boards of feet before moving, and make that move only; add the rest when the next throw asks for it.',
  'moved-the-wrong-way':
    'Before moving, say where along the lane the friction is wanted and on which side of the present line it lies; then say which way that takes the feet.',
}

function tell({ dearest, pins }: Told, { setup }: TagContext) {
  const reading = firstBallOf(dearest)
  const { spot, decision, verdict, staying } = reading
  const move = moveOf(reading)
  if (!move || !staying) throw new RangeError('No move was made here.')
  const { bag, bowler } = setup
  const made = changeWords(staying.decision, decision, bag, bowler.hand)
  const needed = changeWords(staying.decision, verdict.best, bag, bowler.hand)
  return {
    evidence: [
      pinsEvidence('that throw cost', verdict.givenAwayPins),
      shareEvidence('made of the move that was needed', move.share),
      pinsEvidence('staying would have cost', staying.chargedPins),
    ],
    words: `${framesWords([spot.frame])}: a move was called for and went ${WENT[move.kind]}: ${made} where ${needed} was as good as any. About ${pinsWords(pins)}.`,
    practise: PRACTISE[move.kind],
  }
}
