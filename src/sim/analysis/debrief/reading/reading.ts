import type { Decision, Spot, ThrowRecord } from '../../../world/block/types.js'
import type { PricedFairGrade } from '../../grade/grade-types.js'
import type { Innovation } from './innovation.js'
import type { PartShares } from './part-shares.js'

/** What is needed of a grade from what had been seen. */
export type Verdict = Pick<
  PricedFairGrade,
  'best' | 'lostPins' | 'tooCloseToCallPins' | 'givenAwayPins' | 'teachingPins'
>

/** The line thrown before on the same lane, and what staying on it would have cost. */
export interface Staying {
  /** Number of that throw in the block. */
  readonly index: number
  readonly decision: Decision
  readonly record: ThrowRecord
  /** What staying would have been charged; 0 where the choice made was charged nothing and so nothing is asked of it. */
  readonly chargedPins: number
  /** What the throw before told; null where it told nothing of its entry. */
  readonly innovation: Innovation | null
}

/** How the charge for a first ball divides: among its parts, and what of it is a poorer lesson about the oil. */
export interface FirstBallShares extends PartShares {
  readonly lesson: number
}

interface ReadingBase {
  /** Number of the throw in the block, from 0. */
  readonly index: number
  readonly spot: Spot
  readonly decision: Decision
  readonly verdict: Verdict
  /**
   * Whether the best choice goes on being the better one when the physics is doubted and on the oil as it was: the oil can
   * take a finding back, never make one, so that nothing is taught that the oil, once shown, contradicts.
   */
  readonly stands: boolean
}

/** All that findings are read from: one first ball, from what had been seen before it was thrown. */
export interface FirstBallReading extends ReadingBase {
  readonly kind: 'first-ball'
  readonly staying: Staying | null
  /** Add up to the charge; null where nothing was charged. */
  readonly shares: FirstBallShares | null
}

/** One throw at a spare. */
export interface SpareReading extends ReadingBase {
  readonly kind: 'spare'
  readonly standing: number
  /** What putting ball and release right, and the line, would have saved: add up to the charge; null where nothing was charged. */
  readonly shares: { readonly ball: number; readonly line: number } | null
}

export type Reading = FirstBallReading | SpareReading
