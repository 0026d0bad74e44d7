import type { Contact, Decision } from '../../world/block/types.js'

/** What a practice position trains. The first six are told by what a choice cost, the last two by what the player says of the lane. */
export const SKILLS = ['line', 'ball', 'move-size', 'timing', 'spare', 'throw-or-lane', 'read', 'call'] as const
export type Skill = (typeof SKILLS)[number]

/** Skills whose positions end in a decision, and so can be played as a drill. */
export const DECIDED_SKILLS = ['line', 'ball', 'move-size', 'timing', 'spare', 'throw-or-lane'] as const
export type DecidedSkill = (typeof DECIDED_SKILLS)[number]

/** How a position is answered. */
export const KINDS = ['decide', 'read', 'call', 'throw-or-lane'] as const
export type Kind = (typeof KINDS)[number]

/** Where a block stood: a built-in scenario, the seed, and what was thrown up to there. Replaying it gives the lane to the bit. */
export interface Moment {
  readonly scenario: string
  readonly seed: string
  readonly decisions: readonly Decision[]
}

/** Look-alike families are those of one length or of one shape. */
export interface Family {
  readonly length: 'short' | 'medium' | 'long'
  readonly shape: 'flat' | 'between' | 'houseLike'
}

interface PositionBase {
  /** Tells positions apart; stays when positions are made again from the same seeds. */
  readonly id: string
  readonly moment: Moment
  /** Of the oil as posted by the machine, measured fresh. */
  readonly family: Family
  /**
   * Pins that hang on the answer: for a decision what the dearest answer costs, else what deciding here without a clue costs
   * (the mean over the answers offered at that moment, of throw or lane those to the last ball).
   */
  readonly stakesPins: number
}

/** One way to answer a decision, priced once by what had been shown. */
export interface OfferedAnswer {
  readonly decision: Decision
  /** The one figure that every place prints for it: 0 where it is as good as the best. */
  readonly costPins: number
  /** Entry board without a miss, in the mean over what could be known. */
  readonly entryBoard: number
  /** How it is to be expected to meet the rack; shares of the common calls, the rest are misses. Null for spares. */
  readonly contacts: Readonly<Record<CommonContact, number>> | null
}
export const COMMON_CONTACTS = ['light', 'pocket', 'high'] as const satisfies readonly Contact[]
type CommonContact = (typeof COMMON_CONTACTS)[number]

export interface DecidePosition extends PositionBase {
  readonly kind: 'decide'
  readonly skill: DecidedSkill
  /** In a natural order that tells nothing about their price. */
  readonly answers: readonly OfferedAnswer[]
  /** Place of the answer that changes nothing (the line of the first ball at a spare too); null where it is not offered. */
  readonly standing: number | null
}

/** What is asked about the oil. */
export const READ_QUESTIONS = ['shape', 'length', 'lengthFeet', 'volumeMillilitres', 'ratio'] as const
export type ReadQuestion = (typeof READ_QUESTIONS)[number]

/** Where the last ball vanishes, in feet; null where it was seen to the pins. */
export type Vanishes = 15 | 30 | 45 | null

export interface ReadPosition extends PositionBase {
  readonly kind: 'read'
  readonly skill: 'read'
  readonly question: ReadQuestion
  readonly vanishesFeet: Vanishes
  /** What the ideal observer answers: shares of three families, or equally likely values of a figure. */
  readonly ideal: readonly number[]
  /** The same before any of the throws on the screen was seen. */
  readonly before: readonly number[]
  /** Of the oil as it lay when fresh. */
  readonly truth: number
}

export interface CallPosition extends PositionBase {
  readonly kind: 'call'
  readonly skill: 'call'
  /** The line about to be thrown. */
  readonly decision: Decision
  /** Equally likely entry boards of it if thrown as meant, from what had been seen. */
  readonly ideal: readonly number[]
  /** Where it enters on the real oil if thrown as meant. */
  readonly truth: number
}

export interface ThrowOrLanePosition extends PositionBase {
  readonly kind: 'throw-or-lane'
  readonly skill: 'throw-or-lane'
  /** The ideal observer's share of the delivery in the last throw's surprise, 0 to 1. */
  readonly ideal: number
  readonly predictedBoard: number
  readonly shownBoard: number
}

export type Position = DecidePosition | ReadPosition | CallPosition | ThrowOrLanePosition

/** What a player answers. */
export type Answer =
  | { readonly kind: 'choice'; readonly place: number }
  /** Shares of three families; they sum to 1. */
  | { readonly kind: 'shares'; readonly shares: readonly number[] }
  /** The middle four fifths of a figure. */
  | { readonly kind: 'interval'; readonly low: number; readonly high: number }
  | { readonly kind: 'share'; readonly share: number }
