import { type Account, type AccountOptions, accountSteps } from '../../../sim/analysis/debrief/account.js'
import type { ThrowAccount } from '../../../sim/analysis/debrief/throw-account.js'
import { gradeFair } from '../../../sim/analysis/grade/fair-grade.js'
import type { PricedFairGrade } from '../../../sim/analysis/grade/grade-types.js'
import { calledPins } from '../../../sim/analysis/oracle/called-pins.js'
import { gradeKnown, type KnownGrade } from '../../../sim/analysis/oracle/grade.js'
import type { BlockState, ThrowRecord } from '../../../sim/world/block/types.js'
import type { Replay } from '../../store/replay.js'

/** One choice of a block with its prices; choices of practice have none. */
export interface DebriefedThrow {
  readonly record: ThrowRecord
  readonly account: ThrowAccount
  /** Against the best by what had been shown: the grade. */
  readonly fair: PricedFairGrade | null
  /** Against the best with the oil in sight. */
  readonly known: KnownGrade | null
  /** What the known grade is said to give away. */
  readonly calledPins: number
  /** Whether what it cost is the player's own, and so is summed and told of. */
  readonly counted: boolean
}

/** A whole block looked back on, the oil lifted. */
export interface Debrief {
  readonly throws: readonly DebriefedThrow[]
  readonly account: Account
  /** Called against the oil as it was. */
  readonly firstBallPins: number
  readonly sparePins: number
  readonly begun: BlockState
  readonly ended: BlockState
}

export interface DebriefOptions {
  /** Whether the road not taken is priced too. */
  readonly alternatives?: boolean
  /** By the throw's number: whether what it cost is the player's own; all are where it is left out. */
  readonly own?: readonly boolean[]
  readonly reached?: (done: number, of: number) => void
}

/** Prices every choice of a replayed block, and says where the rest went. */
export function debriefOf({ states }: Replay, { alternatives = true, own, reached }: DebriefOptions = {}): Debrief {
  const ended = states[states.length - 1]
  const steps = 2 * ended.throws.length
  const fair = ended.throws.map((record, index) => {
    reached?.(index, steps)
    return fairGrade(states[index], record)
  })
  const options = { grades: fair, alternatives, ...(own ? { own } : {}) }
  const account = accountWith(ended, options, (done) => reached?.(ended.throws.length + done, steps))
  const throws = ended.throws.map((record, index): DebriefedThrow => {
    const known = record.spot.phase === 'practice' ? null : gradeKnown(states[index], record.decision)
    return {
      record,
      account: account.throws[index],
      fair: fair[index],
      known,
      calledPins: known ? calledPins(known) : 0,
      counted: own?.[index] ?? true,
    }
  })
  const pinsOf = (kind: KnownGrade['kind']): number =>
    throws.reduce((sum, one) => sum + (one.counted && one.known?.kind === kind ? one.calledPins : 0), 0)
  return { throws, account, firstBallPins: pinsOf('first-ball'), sparePins: pinsOf('spare'), begun: states[0], ended }
}

function fairGrade(before: BlockState, { spot, decision }: ThrowRecord): PricedFairGrade | null {
  if (spot.phase === 'practice') return null
  const grade = gradeFair(before, decision)
  return grade.kind === 'practice' ? null : grade
}

function accountWith(ended: BlockState, options: AccountOptions, reached: (done: number) => void): Account {
  const steps = accountSteps(ended, options)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
    reached(value.done)
  }
}
