import { beginBlock } from '../../../sim/world/block/begin.js'
import type { BlockState } from '../../../sim/world/block/types.js'
import { ScenarioError } from '../text/scenario-error.js'
import type { Scenario } from './scenario.js'

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
