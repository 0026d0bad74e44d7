import { sessionOf } from '../../sim/analysis/belief/session.js'
import { type BeliefSummary, summarise } from '../../sim/analysis/belief/summary.js'
import { type Account, type AccountStep, accountSteps } from '../../sim/analysis/debrief/account.js'
import { type WhatIf, whatIf } from '../../sim/analysis/explore/what-if.js'
import { choicesFor, gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import type { FairGrade } from '../../sim/analysis/grade/grade-types.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'

/** What takes so long to work out that it is asked for and waited for. */
export type Question =
  /** Everything the coming throw is graded by, ahead of its grade. */
  | { readonly kind: 'prepare' }
  | { readonly kind: 'grade'; readonly decision: Decision }
  | { readonly kind: 'belief' }
  | {
      readonly kind: 'account'
      readonly grades: readonly (FairGrade | null | undefined)[]
      readonly own?: readonly boolean[]
    }
  /** Of the block's throw with this number, had `decision` been made. */
  | { readonly kind: 'what-if'; readonly decision: Decision }

export interface Answers {
  prepare: null
  grade: FairGrade | null
  belief: BeliefSummary
  account: Account
  'what-if': WhatIf
}
export type Answer = Answers[keyof Answers]

/** Answers a question about a block; only an account comes in steps. */
export function* answer(block: BlockState, question: Question): Generator<AccountStep, Answer> {
  switch (question.kind) {
    case 'prepare':
      prepare(block)
      return null
    case 'grade':
      return block.spot?.phase === 'game' ? gradeFair(block, question.decision) : null
    case 'belief': {
      const lane = block.spot?.lane ?? 0
      const known = sessionOf(block).beliefs[lane]
      if (!known) throw new RangeError(`The block has no lane ${lane + 1}.`)
      return summarise(known.toChooseBy)
    }
    case 'account': {
      const { grades, own } = question
      const steps = accountSteps(block, { grades, ...(own ? { own } : {}) })
      for (;;) {
        const { done, value } = steps.next()
        if (done) return value
        if (value) yield value
      }
    }
    case 'what-if':
      return whatIf(block, question.decision)
  }
}

/** Grading the line the panel starts from makes whatever any choice here needs; the answer itself is dropped. */
function prepare(block: BlockState): void {
  if (block.spot === null) return
  const view = playerView(block)
  if (block.spot.phase === 'game' && view) gradeFair(block, view.suggestion)
  else choicesFor(block)
}
