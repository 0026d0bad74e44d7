import type { BlockState } from '../../world/block/types.js'
import type { FairGrade } from '../grade/grade-types.js'
import { type AccountSoFar, accountNext, beginAccount } from './account.js'

/** An account worked out behind play, whenever there is time. */
export interface Settling {
  /** Tells of a throw: the very states before and after it, and its grade as far as there is one. */
  readonly thrown: (before: BlockState, after: BlockState, grade: FairGrade | null | undefined) => void
  /** Does a little. @returns whether there is more to do */
  readonly step: () => boolean
  /** The account as far as it is. */
  readonly soFar: () => AccountSoFar
}

interface Due {
  /** Kept for the latest throw alone: what was worked out for a state is some megabytes. */
  readonly before: BlockState | undefined
  readonly after: BlockState
  readonly grade: FairGrade | null | undefined
}

/** Begins to settle a block with nothing thrown yet, or with throws that are settled later. */
export function settling(begun: BlockState): Settling {
  let soFar = beginAccount(begun)
  let due: readonly Due[] = begun.throws.map(() => ({ before: undefined, after: begun, grade: undefined }))
  let work: Generator<null, AccountSoFar> | null = null
  return {
    thrown: (before, after, grade) => {
      due = [...due.map((one) => ({ ...one, before: undefined })), { before, after, grade }]
    },
    step: () => {
      const [first, ...rest] = due
      if (!first) return false
      const grades = [...soFar.throws.map(() => undefined), first.grade]
      work ??= accountNext(soFar, first.after, { grades }, first.before)
      const { done, value } = work.next()
      if (!done) return true
      soFar = value
      work = null
      due = rest
      return rest.length > 0
    },
    soFar: () => soFar,
  }
}
