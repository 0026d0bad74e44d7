import type { Decision, Spot, ThrowRecord } from '../../../world/block/types.js'
import type { PricedFairGrade } from '../../grade/grade-types.js'
import type { Gap } from './first-ball-judge.js'
import type { Innovation } from './innovation.js'
import type { PartShares } from './part-shares.js'

/** What is needed of a grade by what could be known. */
export type Verdict = Pick<
  PricedFairGrade,
  'best' | 'lostPins' | 'tooCloseToCallPins' | 'givenAwayPins' | 'teachingPins'
>

/**
 * A counterfactual: what to have done instead, what it saves, and whether that stands under doubted physics. What is saved
 * is counted by what could be known, but never as more than the oil as it was would have given: the oil can take a finding
 * back or make it smaller, never make one, so that nothing is taught that the lifted oil contradicts.
 */
export interface Instead {
  readonly decision: Decision
  readonly saved: Gap
  readonly stands: boolean
}

/** The line thrown before on the same lane, and what staying on it would have meant. */
export interface Staying {
  readonly decision: Decision
  readonly record: ThrowRecord
  /** What staying would have lost against the best. */
  readonly lostPins: number
  /** What staying would have saved against the choice made; below 0 where the move was for the better. */
  readonly saved: Gap
  readonly stands: boolean
  /** What the throw before told; null where it told nothing of its entry. */
  readonly innovation: Innovation | null
}

/** All that tags are read from: one first ball, by what could be known before it was thrown. */
export interface FirstBallReading {
  readonly kind: 'first-ball'
  /** Number of the throw in the block, from 0. */
  readonly index: number
  readonly spot: Spot
  readonly decision: Decision
  readonly verdict: Verdict
  readonly staying: Staying | null
  /** The nearest choice as good as the best; null where nothing was given away. */
  readonly nearest: Instead | null
  /** The same with the ball that was chosen, against the choice; null as above. */
  readonly nearestSameBall: Instead | null
  /** What the best line of the ball chosen loses against the best of all; 0 where nothing was given away. */
  readonly ballLostPins: number
  /** How the nearest choice's gain divides among the parts; null as above. */
  readonly shares: PartShares | null
  /** Of what was lost, the part that is a poorer lesson about the oil; 0 after the opening frames. */
  readonly lessonLostPins: number
}

/** One throw at a spare. */
export interface SpareReading {
  readonly kind: 'spare'
  readonly index: number
  readonly spot: Spot
  readonly decision: Decision
  readonly standing: number
  readonly verdict: Verdict
  /** The best choice with the ball and release that were chosen, and with the line that was. */
  readonly shares: { readonly ball: number; readonly line: number } | null
  readonly stands: boolean
}

export type Reading = FirstBallReading | SpareReading
