import type { Decision } from '../../../world/block/types.js'
import type { ChoicePart } from '../reading/part-shares.js'
import type { Reading } from '../reading/reading.js'

/** What a costly choice was, in one kind. */
export const TAG_KINDS = [
  'wrong-ball',
  'wrong-target',
  'wrong-feet',
  'wrong-line',
  'wrong-speed',
  'moved-too-late',
  'moved-too-early',
  'move-too-small',
  'move-too-far',
  'moved-the-wrong-way',
  'blamed-the-lane',
  'missed-a-change',
  'skipped-a-probe',
  'spare-ball',
  'spare-line',
] as const
export type TagKind = (typeof TAG_KINDS)[number]

/** What a figure that a finding stands on is about. */
type EvidenceKind =
  | 'throw-cost'
  | 'ball-part'
  | 'slide-part'
  | 'target-part'
  | 'speed-part'
  | 'line-part'
  | 'throws-cost'
  | 'throws-on-the-line'
  | 'off-the-expected-entry'
  | 'down-to-the-throw'
  | 'down-to-the-lane'
  | 'off-the-target'
  | 'staying-would-have-saved'
  | 'staying-would-have-cost'
  | 'made-of-the-move'
  | 'lesson-lost'

/** A figure that a finding stands on. */
export interface Evidence {
  readonly what: EvidenceKind
  readonly value: number
  readonly unit: 'pins' | 'boards' | 'share' | 'throws'
}

/** A finding about one choice or a run of them: what it cost, what it stands on and what would have mended it. */
export interface Tag {
  readonly kind: TagKind
  /** Throws it is about, by their number in the block from 0, in order. */
  readonly throws: readonly number[]
  readonly game: number
  /** Frames it is about, in order. */
  readonly frames: readonly number[]
  readonly pins: number
  readonly evidence: readonly Evidence[]
  /** Number of the throw it is told of, the dearest of them or the last of a run. */
  readonly at: number
  /** Number of the throw before, where that one should have told; null where none did. */
  readonly before: number | null
  /** What would have mended it: nearest to the line thrown before. */
  readonly mend: Decision
  /** Whether that mends all that throw cost, and not this finding's part of it. */
  readonly mendsAll: boolean
}

/** What a charge divides into: the parts of a choice, what it teaches less, and for spares ball and line. */
export type ChargePart = ChoicePart | 'lesson' | 'line'

/** Something that could be said of one choice that cost pins. */
export interface Claim<R extends Reading = Reading> {
  readonly kind: TagKind
  readonly reading: R
  /** Claims of one game with the same group are one finding, of the kind of its dearest. */
  readonly group: string
  /** What share of each part of the charge it explains, 0 to 1; what is left out it does not explain. */
  readonly explains: Readonly<Partial<Record<ChargePart, number>>>
}

/** A claim with its part of the charge. */
export interface PricedClaim<R extends Reading = Reading> {
  readonly claim: Claim<R>
  readonly pins: number
}

export const pinsEvidence = (what: Evidence['what'], value: number): Evidence => ({ what, value, unit: 'pins' })
export const boardsEvidence = (what: Evidence['what'], value: number): Evidence => ({ what, value, unit: 'boards' })
export const shareEvidence = (what: Evidence['what'], value: number): Evidence => ({ what, value, unit: 'share' })
