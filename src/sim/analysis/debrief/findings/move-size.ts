import type { FirstBallReading } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Candidate, pinsEvidence, shareEvidence, type TagKind } from './tag.js'
import { candidate, counts, firstBalls, type TagContext } from './tag-context.js'

/** A move that goes less than this share of the way was too small, one that goes beyond the other too far. */
const TOO_SMALL = 0.5
const TOO_FAR = 1.5
/** Cosine between the move made and the move to make, from which on the direction was right; below its negative, the other way. */
const SAME_DIRECTION = 0.5

/** Moves that were called for but went not far enough, too far or the other way. */
export function moveSize(context: TagContext): Candidate[] {
  return firstBalls(context).flatMap((reading) => {
    const move = moveOf(reading)
    return move ? [candidateOf(reading, move, context)] : []
  })
}

type MoveKind = Extract<TagKind, 'move-too-small' | 'move-too-far' | 'moved-the-wrong-way'>

interface Move {
  readonly kind: MoveKind
  /** How much of the way was gone; below 0 the other way. */
  readonly share: number
  readonly savedPins: number
  readonly to: FirstBallReading['decision']
}

function moveOf(reading: FirstBallReading): Move | null {
  const { staying, decision, nearest, nearestSameBall, verdict } = reading
  if (!staying || staying.decision.ballId !== decision.ballId) return null
  if (staying.lostPins <= verdict.tooCloseToCallPins) return null
  const instead = nearest?.decision.ballId === decision.ballId ? nearest : nearestSameBall
  if (!counts(instead, reading)) return null
  const made = between(staying.decision.aim, decision.aim)
  const needed = between(staying.decision.aim, instead.decision.aim)
  const along = made.feet * needed.feet + made.target * needed.target
  const madeSquare = made.feet * made.feet + made.target * made.target
  const neededSquare = needed.feet * needed.feet + needed.target * needed.target
  if (madeSquare === 0 || neededSquare === 0) return null
  const cosine = along / Math.sqrt(madeSquare * neededSquare)
  if (Math.abs(cosine) < SAME_DIRECTION) return null
  const share = along / neededSquare
  if (share >= TOO_SMALL && share <= TOO_FAR) return null
  const kind = share < 0 ? 'moved-the-wrong-way' : share < TOO_SMALL ? 'move-too-small' : 'move-too-far'
  return { kind, share, savedPins: instead.saved.pins, to: instead.decision }
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

function candidateOf(
  reading: FirstBallReading,
  { kind, share, savedPins, to }: Move,
  { setup }: TagContext,
): Candidate {
  const from = reading.staying?.decision ?? reading.decision
  const { bag, bowler } = setup
  const move = changeWords(from, reading.decision, bag, bowler.hand)
  const needed = changeWords(from, to, bag, bowler.hand)
  return candidate(
    kind,
    [reading],
    () => savedPins,
    ([{ spot }], pins) => ({
      evidence: [
        pinsEvidence('the nearest move that was as good would have saved', pins),
        shareEvidence('made of the move that was needed', share),
        pinsEvidence('staying would have lost against the best', reading.staying?.lostPins ?? 0),
      ],
      words: `${framesWords([spot.frame])}: a move was called for and went ${WENT[kind]}: ${move} where ${needed} was as good as any. About ${pinsWords(pins)}.`,
      practise: PRACTISE[kind],
    }),
  )
}
