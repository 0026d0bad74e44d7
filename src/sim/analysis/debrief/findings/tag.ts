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

/** One throw's part in a finding. */
export interface TagPart {
  readonly reading: Reading
  readonly pins: number
}

/** A finding that could be told, before those are chosen that will be. */
export interface Candidate {
  readonly kind: TagKind
  /** Of two that explain the same throws about equally dearly, the one that says more goes first. */
  readonly rank: number
  readonly parts: readonly TagPart[]
  /** Tells it of all its throws, or of those that no other finding has claimed. */
  readonly tell: (parts: readonly TagPart[]) => Tag
}

export const pinsEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'pins' })
export const boardsEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'boards' })
export const shareEvidence = (words: string, value: number): Evidence => ({ words, value, unit: 'share' })
