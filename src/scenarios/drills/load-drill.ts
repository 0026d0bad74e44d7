import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { advance, checkDecision } from '../../sim/world/block/advance.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { DRILL_VERSION, drillSchema, type PositionData } from '../files/schema/drill.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../files/text/source-text.js'
import { loadScenario } from '../library/load.js'
import { decisionsOf } from '../store/record.js'

/** What stands for words that only the coach has. */
export const LOOK_FOR_TO_WRITE = 'Say here what you want seen.'

/** A moment of a drill, ready to be decided. */
export interface DrillPosition {
  readonly scenario: Scenario
  readonly state: BlockState
  readonly throws: number
  readonly lookFor: string
}

export interface Drill {
  readonly title: string
  readonly positions: readonly DrillPosition[]
}

/**
 * Reads a drill and plays each of its positions up to where the player comes in.
 *
 * @throws ScenarioError with every problem of the file, or the first one of a position
 */
export async function loadDrill(path: string): Promise<Drill> {
  const source = readSourceText(path, await readTextFile(path))
  refuseNewer(source, DRILL_VERSION)
  const checked = drillSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const { title, positions, scenarios } = checked.data
  const ready: DrillPosition[] = []
  for (const [index, position] of positions.entries()) {
    const { text } = source.place(['positions', index], 'value')
    const place = `${text} positions ${index + 1}`
    const own = Object.hasOwn(scenarios, position.scenario) ? scenarios[position.scenario] : undefined
    const scenario = own
      ? scenarioFrom(position.scenario, locateNowhere(`${path} scenarios > ${position.scenario}`, own))
      : await scenarioOf(place, dirname(path), position.scenario)
    ready.push(positionAt(place, scenario, position))
  }
  return { title, positions: ready }
}

/** A file beside the drill, or a built-in name; one that is neither is told at its place in the drill. */
async function scenarioOf(place: string, folder: string, name: string): Promise<Scenario> {
  const beside = join(folder, name)
  try {
    return await loadScenario(existsSync(beside) ? beside : name)
  } catch (fault) {
    if (!(fault instanceof ScenarioError && fault.missing)) throw fault
    throw new ScenarioError([`${place} > scenario: ${fault.sentences[0]}`], true)
  }
}

function positionAt(place: string, scenario: Scenario, position: PositionData): DrillPosition {
  let state = beginScenario(scenario, position.seed)
  for (const [index, decision] of decisionsOf(position).entries()) {
    const problem = checkDecision(state, decision)
    if (problem !== null) throw new ScenarioError([`${place} > decisions ${index + 1}: ${problem}`])
    state = advance(state, decision)
  }
  if (!state.spot)
    throw new ScenarioError([`${place}: the block is over after these decisions; nothing is left to decide.`])
  return { scenario, state, throws: position.throws, lookFor: position.lookFor }
}
