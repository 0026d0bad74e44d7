import { type Account, type AccountOptions, accountSteps } from '../../../sim/analysis/debrief/account.js'
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
  /** Whether what it cost is the player's own, and so is summed and told of. */
  readonly counted: boolean
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
  /** By the throw's number: whether what it cost is the player's own; all are where it is left out. */
  readonly own?: readonly boolean[]
  readonly reached?: (done: number, of: number) => void
}

/** Prices every choice of a replayed block in one walk over it, and says where the rest went. */
export function debriefOf({ states }: Replay, options: DebriefOptions = {}): Debrief {
  const ended = states[states.length - 1]
  const account = options.account ?? accountWith(ended, options)
  const throws = ended.throws.map((record, index): DebriefedThrow => {
    const own = account.throws[index]
    return { record, account: own, fair: own.graded?.grade ?? null, counted: options.own?.[index] ?? true }
  })
  const pinsOf = (kind: ThrowAccount['kind']): number =>
    throws.reduce(
      (sum, { account: one, counted }) => sum + (counted && one.kind === kind ? (one.graded?.knownLostPins ?? 0) : 0),
      0,
    )
  return { throws, account, firstBallPins: pinsOf('first-ball'), sparePins: pinsOf('spare'), begun: states[0], ended }
}

function accountWith(ended: BlockState, { grades, alternatives = true, own, reached }: DebriefOptions): Account {
  const options: AccountOptions = { ...(grades ? { grades } : {}), ...(own ? { own } : {}), alternatives }
  const steps = accountSteps(ended, options)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
    if (value) reached?.(value.done, value.of)
  }
}
