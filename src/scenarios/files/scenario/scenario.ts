import type { BlockSetup } from '../../../sim/world/block/types.js'
import { SCENARIO_VERSION, type ScenarioData, scenarioSchema } from '../schema/scenario.js'
import { refuseNewer } from '../text/newer-version.js'
import { problemSentences } from '../text/problems.js'
import { ScenarioError } from '../text/scenario-error.js'
import type { LocatedData } from '../text/source-text.js'
import { blockSetupFromData } from './block-setup.js'

/** A checked scenario: what a person reads, what was written and what the simulator plays. */
export interface Scenario {
  /** The built-in name, or the file's name without folder and ending. */
  readonly name: string
  readonly title: string
  readonly purpose: string
  readonly notes: string
  readonly data: ScenarioData
  readonly setup: BlockSetup
}

/**
 * Checks data against the schema and turns it into SI.
 *
 * @throws ScenarioError with a sentence for every problem there is.
 */
export function scenarioFrom(name: string, source: LocatedData): Scenario {
  refuseNewer(source, SCENARIO_VERSION)
  const checked = scenarioSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const data = checked.data
  return {
    name,
    title: data.title,
    purpose: data.purpose,
    notes: data.notes,
    data,
    setup: blockSetupFromData(name, data),
  }
}
