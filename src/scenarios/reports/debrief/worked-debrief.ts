import { keepAccount, readKeptAccount } from '../../store/kept-account.js'
import { type BlockRecord, ownThrows } from '../../store/record.js'
import { type Replay, replayKnown, replayRecord } from '../../store/replay.js'
import { type Debrief, debriefOf } from './debrief.js'

export interface WorkedDebrief {
  readonly replay: Replay
  readonly debrief: Debrief
}

export interface DebriefWork {
  /** The record's path, for sentences. */
  readonly path: string
  /** Where what is worked out of blocks is kept. */
  readonly folder: string
  readonly reached: (done: number, of: number) => void
  /** Leaves the road not taken out, where it is not worked out yet. */
  readonly quick?: boolean
}

/**
 * A record's debrief. What play, the screen or another command has worked out of the block is taken from where it is kept, and
 * what is worked out now is kept for them: every reader of one block has the same figures, and none is worked out twice.
 *
 * @throws ScenarioError where the record does not reproduce
 * @throws WriteError where what was worked out cannot be kept
 */
export async function workedDebrief(record: BlockRecord, work: DebriefWork): Promise<WorkedDebrief> {
  const { path, folder, reached, quick = false } = work
  const kept = await readKeptAccount(folder, record)
  const replay = kept ? replayKnown(record, path) : replayRecord(record, path)
  const debrief = debriefOf(replay, {
    account: kept?.account ?? null,
    ...(kept ? { grades: kept.grades } : {}),
    alternatives: !quick,
    own: ownThrows(record),
    reached,
  })
  if (!kept?.account && !quick) {
    const grades = debrief.throws.map(({ fair }) => fair)
    await keepAccount(folder, record, { grades, account: debrief.account })
  }
  return { replay, debrief: quick ? withoutRoads(debrief) : debrief }
}

function withoutRoads(debrief: Debrief): Debrief {
  const throws = debrief.throws.map((one) => {
    const { graded } = one.account
    return { ...one, account: { ...one.account, graded: graded && { ...graded, alternatives: [] } } }
  })
  return { ...debrief, throws, account: { ...debrief.account, throws: throws.map(({ account }) => account) } }
}
