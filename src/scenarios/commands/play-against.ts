import type { BlockState } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { readRecord } from '../store/record.js'
import { replayRecord } from '../store/replay.js'

/** A block bowled before, whose lane and luck another is bowled on. */
export interface BlockBefore {
  readonly scenario: Scenario
  readonly block: BlockState
}

/** The block of a record, played again. @throws ScenarioError */
export async function blockBefore(path: string): Promise<BlockBefore> {
  const { scenario, states } = replayRecord(await readRecord(path), path)
  return { scenario, block: states[states.length - 1] }
}
