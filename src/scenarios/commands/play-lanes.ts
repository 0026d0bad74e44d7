import type { BlockState } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { loadScenario } from '../library/load.js'
import { sameLuckLines, workedComparison } from '../plain/same-luck-lines.js'
import { debriefsFolder } from '../store/data-folder.js'
import { COMPARISONS, keepFigures, readFigures } from '../store/kept-figures.js'
import { readRecord } from '../store/record.js'
import { replayRecord } from '../store/replay.js'
import { refuseSealedRecord } from '../store/sealed-lanes.js'
import { laneOfToday } from '../store/today.js'
import { LANE_OF_THE_DAY_ABOUT } from '../words/same-luck-words.js'
import type { CommandConsole } from './console/console.js'
import { progressOn } from './console/progress.js'

const DEFAULT_SCENARIO = 'house-forty'

/** A block bowled before, whose lane and luck another is bowled on. */
export interface BlockBefore {
  readonly scenario: Scenario
  readonly block: BlockState
}

/** The block of a record, played again. @throws ScenarioError */
export async function blockBefore(path: string, data: string): Promise<BlockBefore> {
  const record = await readRecord(path)
  refuseSealedRecord(data, path, record)
  const { scenario, states } = replayRecord(record, path)
  return { scenario, block: states[states.length - 1] }
}

/** Lanes and, where they are settled with them, the seed. */
export interface Lanes {
  readonly scenario: Scenario
  readonly seed?: string
}

/** Which lanes a block is played on: a rival's, the day's, or those of a name. */
export async function lanesOf(
  name: string | undefined,
  { today }: { readonly today?: boolean },
  rival: BlockBefore | null,
  console: CommandConsole,
): Promise<Lanes> {
  if (rival) {
    console.print('Against a block bowled before: each of its throws is said once you have made yours.')
    return { scenario: rival.scenario, seed: rival.block.seed }
  }
  if (!today) return { scenario: await loadScenario(name ?? DEFAULT_SCENARIO) }
  const { date, scenarioName, seed } = laneOfToday()
  console.print(`Lane of the day ${date}. ${LANE_OF_THE_DAY_ABOUT}`)
  return { scenario: await loadScenario(scenarioName), seed }
}

/** Says what others score on the block's luck, as kept or worked out now. */
export async function compare(
  scenario: Scenario,
  state: BlockState,
  data: string,
  console: CommandConsole,
): Promise<void> {
  const folder = debriefsFolder(data)
  const of = { scenario, asked: state.seed }
  let comparison = await readFigures(folder, COMPARISONS, of)
  if (!comparison) {
    const progress = progressOn(console, 'bowling the block by rule of thumb and by both bests, percent')
    comparison = workedComparison(beginScenario(scenario, state.seed), (percent) => progress.reached(percent, 100))
    progress.over()
    await keepFigures(folder, COMPARISONS, of, comparison)
  }
  for (const line of sameLuckLines(state, comparison)) console.print(line)
}
