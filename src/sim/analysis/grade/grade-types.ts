import type { Decision } from '../../world/block/types.js'
import type { ExpectedReaction } from './contact-chances.js'

/** The best line of one ball, for one who knows no more than was shown. */
export interface FairBall {
  readonly ballId: string
  readonly decision: Decision
  /** Expected game pins against the bowler's average first ball. */
  readonly worth: number
}

interface FairGradeBase {
  /** What is shown as the best: the choice itself where it costs nothing, else the nearest to the last line that cannot be told from the best. */
  readonly best: Decision
  /** Pins that seeing the oil would be worth on this throw. */
  readonly informationPins: number
  /** Expected game pins that the throw's lesson gains on each later throw; null where lessons are not counted. */
  readonly teachingPins: number | null
  /** Dearest first; empty for spares. */
  readonly perBall: readonly FairBall[]
}

/** A throw with pins at stake, held against the best that could be chosen by what had been shown. All in game pins. */
export interface PricedFairGrade extends FairGradeBase {
  readonly kind: 'first-ball' | 'spare'
  /** Worth against the bowler's average first ball, or against felling nothing. */
  readonly choiceWorth: number
  readonly bestWorth: number
  /** What the choice loses in expectation; never below 0. */
  readonly lostPins: number
  /** One standard error of it. */
  readonly standardErrorPins: number
  /** Tau: a loss up to this cannot be told from none. */
  readonly tooCloseToCallPins: number
  /** The grade, and the one figure that is printed for this choice: the whole loss where it is charged, else 0. */
  readonly givenAwayPins: number
  /** What the best gains over changing nothing: how much there was to decide. */
  readonly stakesPins: number
  /** Share of sensible choices that are worth no more, 0 to 1; null for spares. */
  readonly percentile: number | null
  /** Why it costs what it does; null for spares. */
  readonly reason: GradeReason | null
}

/** How a first ball was to be expected to come in from what had been shown, and the best beside it. */
export interface GradeReason {
  readonly choice: ExpectedReaction
  /** Of the best that is shown; null where the choice costs nothing. */
  readonly best: ExpectedReaction | null
  /** Pins of the cost that are a poorer lesson about the oil. */
  readonly lessonPins: number
}

/** A practice throw has nothing at stake but what it teaches. */
export interface PracticeFairGrade extends FairGradeBase {
  readonly kind: 'practice'
  readonly teachingPins: number
  /** The same for the throw that would teach most, which is `best`. */
  readonly bestTeachingPins: number
  readonly choiceWorth: null
  readonly bestWorth: null
  readonly lostPins: null
  readonly standardErrorPins: null
  readonly tooCloseToCallPins: null
  readonly givenAwayPins: null
  readonly stakesPins: null
  readonly percentile: null
}

/** A decision graded from what had been seen when it was made. Nothing that came after it has a part in it. */
export type FairGrade = PricedFairGrade | PracticeFairGrade
