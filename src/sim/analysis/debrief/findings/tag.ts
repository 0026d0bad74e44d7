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

/** A named figure that a tag stands on. */
export interface Evidence {
  readonly words: string
  readonly value: number
  readonly unit: 'pins' | 'boards' | 'share' | 'throws'
}

/** A finding about one choice or a run of them: what it cost, what it stands on and what to practise. */
export interface Tag {
  readonly kind: TagKind
  /** Throws it is about, by their number in the block from 0, in order. */
  readonly throws: readonly number[]
  readonly game: number
  /** Frames it is about, in order. */
  readonly frames: readonly number[]
  readonly pins: number
  readonly evidence: readonly Evidence[]
  readonly words: string
  readonly practise: string
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

export const pinsEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'pins' })
export const boardsEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'boards' })
export const shareEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'share' })
