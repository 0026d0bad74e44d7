import { beginScenario } from '../begin-scenario.js'
import { type Hardness, hardnessOf, hardnessWord, informationAtStart } from '../hardness.js'
import { jsonText, rounded } from '../json.js'
import { commentedScenario } from '../library/commented.js'
import { builtInNames, builtInScenario } from '../library/library.js'
import { loadScenario } from '../load.js'
import { ScenarioError } from '../scenario-error.js'
import { type LaneSummary, laneSummaries, laneWords } from '../scenario-summary.js'
import { scenarioJsonSchema } from '../schema/json-schema.js'
import type { CommandConsole } from './console.js'
import { EXIT } from './exit-codes.js'
import { progressOn } from './progress.js'

/** Seeds under which drawn oil is tried, so that bounds which contradict each other do not wait for a player. */
const TRIED_SEEDS = ['1', '2', '3']

interface Checked {
  readonly file: string
  readonly problems: readonly string[]
  readonly lanes: readonly LaneSummary[]
  readonly hardness: Hardness | null
  /** Game pins that seeing the oil would be worth on the first throw. */
  readonly informationPins: number | null
}

export interface CheckOptions {
  /** Leaves out how hard a scenario is, which takes seconds. */
  readonly quick?: boolean
  readonly json?: boolean
}

/** Checks scenario files; every fault of every file is a result, and any at all makes the check fail. */
export async function scenarioCheckCommand(
  files: readonly string[],
  options: CheckOptions,
  console: CommandConsole,
): Promise<number> {
  const progress = progressOn(console, 'checking')
  const checked: Checked[] = []
  for (const file of files) {
    const one = await checkFile(file, options.quick !== true, () => progress.reached(checked.length, files.length))
    progress.over()
    checked.push(one)
    if (!options.json) for (const line of linesOf(one)) console.print(line)
  }
  if (options.json) console.print(jsonText({ checked }))
  return checked.some(({ problems }) => problems.length > 0) ? EXIT.checkFailed : EXIT.fine
}

async function checkFile(file: string, weigh: boolean, working: () => void): Promise<Checked> {
  const nothing = { file, lanes: [], hardness: null, informationPins: null }
  try {
    const scenario = await loadScenario(file)
    for (const seed of TRIED_SEEDS) beginScenario(scenario, seed)
    working()
    const fine = { ...nothing, problems: [], lanes: laneSummaries(scenario, TRIED_SEEDS[0]) }
    if (!weigh) return fine
    const { thumbPins, stayPins } = hardnessOf(scenario)
    return {
      ...fine,
      hardness: { thumbPins: rounded(thumbPins, 1), stayPins: rounded(stayPins, 1) },
      informationPins: rounded(informationAtStart(scenario), 2),
    }
  } catch (fault) {
    if (fault instanceof ScenarioError && !fault.missing) return { ...nothing, problems: fault.sentences }
    throw fault
  }
}

function linesOf({ file, problems, lanes, hardness, informationPins }: Checked): readonly string[] {
  if (problems.length > 0) return problems
  return [
    `${file}: fine`,
    ...lanes.map((lane) => `  ${laneWords(lane)}`),
    ...(hardness && informationPins !== null
      ? [
          `  ${hardnessWord(hardness)}: on first balls the rule of thumb gives away ${hardness.thumbPins.toFixed(1)} pins a game, never moving ${hardness.stayPins.toFixed(1)}, against the best with the oil in sight`,
          `  seeing the oil before the first throw would be worth ${informationPins.toFixed(1)} pins on it`,
        ]
      : []),
  ]
}

/** A built-in scenario as YAML with comments, to be changed. */
export function scenarioNewCommand(from: string, console: CommandConsole): number {
  const data = builtInScenario(from)
  if (!data) {
    throw new ScenarioError(
      [`${from}: there is no built-in scenario of that name; they are ${builtInNames().join(', ')}.`],
      true,
    )
  }
  console.print(commentedScenario(data))
  return EXIT.fine
}

/** The file format as JSON Schema (draft 7), for editors that complete and check while one writes. */
export function scenarioSchemaCommand(console: CommandConsole): number {
  console.print(jsonText(scenarioJsonSchema()))
  console.tell(
    'Keep it as scenario.schema.json and begin a scenario with "# yaml-language-server: $schema=./scenario.schema.json" (YAML) or "$schema": "./scenario.schema.json" (JSON); editors with a YAML language server then complete and check. What only the loader knows, such as the rules for balls, dryboard scenario check tells.',
  )
  return EXIT.fine
}
