import { beginBlock } from '../sim/block/begin.js'
import type { BlockState } from '../sim/block/types.js'
import type { Scenario } from './scenario.js'
import { ScenarioError } from './scenario-error.js'

/**
 * A scenario's block before its first throw.
 *
 * @throws ScenarioError where no oil can be drawn within the scenario's bounds.
 */
export function beginScenario(scenario: Scenario, seed: string): BlockState {
  try {
    return beginBlock(scenario.setup, seed)
  } catch (fault) {
    if (fault instanceof RangeError) throw new ScenarioError([`${scenario.name}: ${fault.message}`])
    throw fault
  }
}
