import type { BlockState, Decision } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'

/**
 * A block that a host throws: this side knows what a bowler sees and no more, so that nothing of the oil and of luck to come is in
 * its states. Where a state needs oil there lies none.
 */
export interface JoinedBlock {
  readonly scenario: Scenario
  readonly title: string
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
  /** Asks the host to throw: the block after it, as it is seen. @throws WriteError where the host cannot be asked or will not */
  throwNext(state: BlockState, decision: Decision): Promise<BlockState>
}
