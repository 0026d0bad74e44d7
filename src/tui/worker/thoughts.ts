import { sessionOf } from '../../sim/analysis/belief/session.js'
import { type BeliefSummary, summarise } from '../../sim/analysis/belief/summary.js'
import {
  type Account,
  type AccountSoFar,
  type AccountStep,
  accountNext,
  accountSteps,
  beginAccount,
} from '../../sim/analysis/debrief/account.js'
import { averageSteps, type BowlerAverage } from '../../sim/analysis/explore/bowler-average.js'
import { type Comparison, type ComparisonStep, compareOnSameLuck } from '../../sim/analysis/explore/same-luck.js'
import { type WhatIf, whatIf } from '../../sim/analysis/explore/what-if.js'
import { choicesFor, gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import type { FairGrade } from '../../sim/analysis/grade/grade-types.js'
import { type Asked, askAt } from '../../sim/analysis/practice/walk.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'

/** What takes so long to work out that it is asked for and waited for. */
export type Question =
  /** Everything the coming throw is graded by, ahead of its grade. */
  | { readonly kind: 'prepare' }
  | { readonly kind: 'grade'; readonly decision: Decision }
  | { readonly kind: 'belief' }
  /** The account as far as the block is played, ahead of the whole. */
  | { readonly kind: 'settle'; readonly grades: readonly (FairGrade | null | undefined)[] }
  | {
      readonly kind: 'account'
      readonly grades: readonly (FairGrade | null | undefined)[]
      readonly own?: readonly boolean[]
    }
  /** All there is to practise at the coming throw. */
  | { readonly kind: 'positions'; readonly scenario: string }
  /** Of the block's throw with this number, had `decision` been made. */
  | { readonly kind: 'what-if'; readonly decision: Decision }
  /** Of a block before its first throw: what others score on its luck. */
  | { readonly kind: 'comparison' }
  /** What the block's bowler averages on its lanes over so many games. */
  | { readonly kind: 'average'; readonly games: number }

export interface Answers {
  prepare: null
  grade: FairGrade | null
  belief: BeliefSummary
  settle: null
  account: Account
  'what-if': WhatIf
  positions: Asked
  comparison: Comparison
  average: BowlerAverage
}

/** What comes before an answer that takes many steps. */
export interface Steps {
  prepare: never
  grade: never
  belief: never
  settle: never
  account: AccountStep
  positions: never
  'what-if': never
  comparison: ComparisonStep
  average: BowlerAverage
}
export type Step = Steps[keyof Steps]

/** Whether an answer comes in so many steps that others are given between them. */
export const isLong = ({ kind }: Question): boolean =>
  kind === 'settle' || kind === 'account' || kind === 'comparison' || kind === 'average'

export type Answer = Answers[keyof Answers]

/** Answers a question about a block; long answers come in steps, with null where others may be slipped in between two. */
export function* answer(block: BlockState, question: Question): Generator<Step | null, Answer> {
  switch (question.kind) {
    case 'prepare':
      prepare(block)
      return null
    case 'grade':
      if (block.spot?.phase !== 'game') return null
      lastGraded = block
      return gradeFair(block, question.decision)
    case 'belief': {
      const lane = block.spot?.lane ?? 0
      const known = sessionOf(block).beliefs[lane]
      if (!known) throw new RangeError(`The block has no lane ${lane + 1}.`)
      return summarise(known.toChooseBy)
    }
    case 'account': {
      const { grades, own } = question
      return yield* accountSteps(block, { grades, ...(own ? { own } : {}) }, settledOf(block))
    }
    case 'positions':
      return askAt(block, question.scenario)
    case 'settle':
      return yield* settle(block, question.grades)
    case 'what-if':
      return whatIf(block, question.decision)
    case 'comparison':
      return yield* compareOnSameLuck(block)
    case 'average':
      return yield* averageSteps(block.setup, question.games)
  }
}

/** The block whose coming throw was graded last: what was worked out for it is there while it is. */
let lastGraded: BlockState | null = null
/** The account of the block played last, as far as it was settled. */
let settled: AccountSoFar | null = null

/** What is settled of a block's account; nothing where it was another block's. */
function settledOf(block: BlockState): AccountSoFar {
  const { session, throws } = settled ?? beginAccount(block)
  const isOwn =
    session.setup === block.setup &&
    session.seed === block.seed &&
    throws.length <= block.throws.length &&
    throws.every(({ observation }, index) => observation === block.throws[index].observation)
  return settled && isOwn ? settled : beginAccount(block)
}

function* settle(block: BlockState, grades: readonly (FairGrade | null | undefined)[]): Generator<null, null> {
  settled = settledOf(block)
  while (settled.throws.length < block.throws.length) {
    const index: number = settled.throws.length
    const before = lastGraded && isBefore(lastGraded, block, index) ? lastGraded : undefined
    settled = yield* accountNext(settled, block, { grades }, before)
  }
  return null
}

/** Whether a state is the one that a throw of a block was decided in. */
function isBefore({ setup, seed, throws }: BlockState, block: BlockState, index: number): boolean {
  return (
    setup === block.setup &&
    seed === block.seed &&
    throws.length === index &&
    throws.every((record, at) => record === block.throws[at])
  )
}

/** Grading the line the panel starts from makes whatever any choice here needs; the answer itself is dropped. */
function prepare(block: BlockState): void {
  if (block.spot === null) return
  const view = playerView(block)
  if (block.spot.phase === 'game' && view) gradeFair(block, view.suggestion)
  else choicesFor(block)
}
