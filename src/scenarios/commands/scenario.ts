import { stringify } from 'yaml'
import { z } from 'zod'
import { beginScenario } from '../begin-scenario.js'
import { jsonText } from '../json.js'
import { builtInNames, builtInScenario } from '../library/library.js'
import { loadScenario } from '../load.js'
import { ScenarioError } from '../scenario-error.js'
import { scenarioSchema } from '../schema/scenario.js'
import type { CommandConsole } from './console.js'
import { EXIT } from './exit-codes.js'

/** Seeds under which drawn oil is tried, so that bounds which contradict each other do not wait for a player. */
const TRIED_SEEDS = ['1', '2', '3']

/** Checks scenario files; every fault of every file is a result, and any at all makes the check fail. */
export async function scenarioCheckCommand(
  files: readonly string[],
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const checked = []
  for (const file of files) checked.push({ file, problems: await problemsIn(file) })
  if (options.json) console.print(jsonText({ checked }))
  else {
    for (const { file, problems } of checked) {
      for (const line of problems.length > 0 ? problems : [`${file}: fine`]) console.print(line)
    }
  }
  return checked.some(({ problems }) => problems.length > 0) ? EXIT.checkFailed : EXIT.fine
}

async function problemsIn(file: string): Promise<readonly string[]> {
  try {
    const scenario = await loadScenario(file)
    for (const seed of TRIED_SEEDS) beginScenario(scenario, seed)
    return []
  } catch (fault) {
    if (fault instanceof ScenarioError && !fault.missing) return fault.sentences
    throw fault
  }
}

/** A built-in scenario as YAML, to be changed. */
export function scenarioNewCommand(from: string, console: CommandConsole): number {
  const data = builtInScenario(from)
  if (!data) {
    throw new ScenarioError(
      [`${from}: there is no built-in scenario of that name; they are ${builtInNames().join(', ')}.`],
      true,
    )
  }
  console.print(stringify(data, { aliasDuplicateObjects: false, lineWidth: 0 }).trimEnd())
  return EXIT.fine
}

/** The file format as JSON Schema (draft 7), for editors that complete and check while one writes. */
export function scenarioSchemaCommand(console: CommandConsole): number {
  console.print(jsonText(z.toJSONSchema(scenarioSchema, { target: 'draft-07', io: 'input' })))
  return EXIT.fine
}
