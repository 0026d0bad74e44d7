import { advance, checkDecision } from '../../sim/world/block/advance.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { DRILL_VERSION, drillSchema, type PositionData } from '../files/schema/drill.js'
import { capped } from '../files/text/capped.js'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../files/text/source-text.js'
import { builtInScenario } from '../library/library.js'
import { loadScenario, noBuiltInWords } from '../library/load.js'
import { decisionsOf } from '../store/record.js'
import { fileBeside } from './file-beside.js'

/** What stands for words that only the coach has, until they are written: as it stands it is a fault. */
export const LOOK_FOR_TO_WRITE = 'Say here what you want seen.'

/** A moment of a drill, ready to be decided. */
export interface DrillPosition {
  readonly scenario: Scenario
  readonly state: BlockState
  /** The block before each throw that is given, and last as the player comes to it. */
  readonly states: readonly BlockState[]
  readonly throws: number
  readonly lookFor: string
  /** What was thrown before the player comes to it. */
  readonly given: readonly Decision[]
}

export interface Drill {
  readonly title: string
  readonly positions: readonly DrillPosition[]
}

/**
 * Reads a drill and plays each of its positions up to where the player comes in.
 *
 * @throws ScenarioError with every problem of the file, or with the first one of each position
 */
export async function loadDrill(path: string): Promise<Drill> {
  const source = readSourceText(path, await readTextFile(path))
  refuseNewer(source, DRILL_VERSION)
  const checked = drillSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const { title, positions, scenarios } = checked.data
  const ready: DrillPosition[] = []
  const faults: ScenarioError[] = []
  for (const [index, position] of positions.entries()) {
    const { text } = source.place(['positions', index], 'value')
    const place = `${text} positions ${index + 1}`
    try {
      const own = Object.hasOwn(scenarios, position.scenario) ? scenarios[position.scenario] : undefined
      const scenario = own
        ? scenarioFrom(position.scenario, locateNowhere(`${path} scenarios > ${position.scenario}`, own))
        : await scenarioOf(place, path, position.scenario)
      ready.push(positionAt(place, scenario, position))
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
      faults.push(fault)
    }
  }
  if (faults.length > 0) {
    const sentences = faults.flatMap((fault) => fault.sentences)
    throw new ScenarioError(
      capped(path, sentences.length, (at) => sentences[at]!),
      faults.every(({ missing }) => missing),
    )
  }
  return { title, positions: ready }
}

/**
 * A file beside the drill, or a built-in name. Of a file that is no scenario only that is told, at its place in the drill: what
 * stands in it may be none of the business of whoever wrote the drill.
 */
async function scenarioOf(place: string, drillPath: string, name: string): Promise<Scenario> {
  const beside = await fileBeside(drillPath, name)
  if (beside && 'refusal' in beside)
    throw new ScenarioError([`${place} > scenario: found ${JSON.stringify(name)}; ${beside.refusal}.`])
  if (!beside && builtInScenario(name) === undefined) {
    const sentence = `there is no such file in the folder of the drill, and ${noBuiltInWords(name)}`
    throw new ScenarioError([`${place} > scenario: ${name}: ${sentence}.`], true)
  }
  try {
    return await loadScenario(beside ? beside.path : name)
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    const sentence = `${name}: this file is no sound scenario; dryboard scenario check tells what is wrong with it`
    throw new ScenarioError([`${place} > scenario: ${sentence}.`], fault.missing)
  }
}

function positionAt(place: string, scenario: Scenario, position: PositionData): DrillPosition {
  if (position.lookFor.includes(LOOK_FOR_TO_WRITE)) {
    const sentence = 'found the words that stand there until it is written; allowed is what the player is to see or ask'
    throw new ScenarioError([`${place} > lookFor: ${sentence}.`])
  }
  let state = beginScenario(scenario, position.seed)
  const states = [state]
  const given = decisionsOf(position)
  for (const [index, decision] of given.entries()) {
    const problem = checkDecision(state, decision)
    if (problem !== null) throw new ScenarioError([`${place} > decisions ${index + 1}: ${problem}`])
    state = advance(state, decision)
    states.push(state)
  }
  if (!state.spot)
    throw new ScenarioError([`${place}: the block is over after these decisions; nothing is left to decide.`])
  return { scenario, state, states, throws: position.throws, lookFor: position.lookFor, given }
}
