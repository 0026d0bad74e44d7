import type { BlockSetup, Decision } from '../../sim/world/block/types.js'
import type { Answer, Question, Step } from './thoughts.js'

/** A block told so that the other thread can play it again: cheap to send, and the same to the last digit. */
export interface ToldBlock {
  /** Tells setups apart; a setup already known by its number is not read again. */
  readonly setupNumber: number
  readonly setup: BlockSetup
  readonly seed: string
  readonly decisions: readonly Decision[]
}

export type ToWorker =
  | { readonly kind: 'ask'; readonly id: number; readonly block: ToldBlock; readonly question: Question }
  | { readonly kind: 'give-up'; readonly id: number }

export type FromWorker =
  | { readonly kind: 'step'; readonly id: number; readonly step: Step }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: Answer }
  | { readonly kind: 'fault'; readonly id: number; readonly sentence: string }
