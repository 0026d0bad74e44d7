import { type Account, accountSteps } from '../../../sim/analysis/debrief/account.js'
import type { ThrowAccount } from '../../../sim/analysis/debrief/throw-account.js'
import type { FairGrade, PricedFairGrade } from '../../../sim/analysis/grade/grade-types.js'
import type { BlockState, ThrowRecord } from '../../../sim/world/block/types.js'
import type { Replay } from '../../store/replay.js'

/** One choice of a block with its prices; choices of practice have none. */
export interface DebriefedThrow {
  readonly record: ThrowRecord
  readonly account: ThrowAccount
  /** Against the best by what had been shown: the grade. */
  readonly fair: PricedFairGrade | null
}

/** A whole block looked back on, the oil shown. */
export interface Debrief {
  readonly throws: readonly DebriefedThrow[]
  readonly account: Account
  /** Lost against the best if the oil is seen. */
  readonly firstBallPins: number
  readonly sparePins: number
  readonly begun: BlockState
  readonly ended: BlockState
}

export interface DebriefOptions {
  /** Whether the road not taken is priced too. */
  readonly alternatives?: boolean
  /** What play has worked out already; nothing of it is worked out again. */
  readonly grades?: readonly (FairGrade | null | undefined)[]
  readonly account?: Account | null
  readonly reached?: (done: number, of: number) => void
}

/** Prices every choice of a replayed block in one walk over it, and says where the rest went. */
export function debriefOf({ states }: Replay, options: DebriefOptions = {}): Debrief {
  const ended = states[states.length - 1]
  const account = options.account ?? accountWith(ended, options)
  const throws = ended.throws.map((record, index): DebriefedThrow => {
    const own = account.throws[index]
    return { record, account: own, fair: own.graded?.grade ?? null }
  })
  const pinsOf = (kind: ThrowAccount['kind']): number =>
    account.throws.reduce((sum, one) => sum + (one.kind === kind ? (one.graded?.knownLostPins ?? 0) : 0), 0)
  return { throws, account, firstBallPins: pinsOf('first-ball'), sparePins: pinsOf('spare'), begun: states[0], ended }
}

function accountWith(ended: BlockState, { grades, alternatives = true, reached }: DebriefOptions): Account {
  const steps = accountSteps(ended, { ...(grades ? { grades } : {}), alternatives })
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
    reached?.(value.done, value.of)
  }
}
