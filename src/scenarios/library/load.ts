import { basename } from 'node:path'
import { checkOil } from '../files/scenario/possible-oil.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { PACK_FORMAT } from '../files/schema/contest-formats.js'
import { nearestOf } from '../files/text/nearest.js'
import { isLine, lineWords } from '../files/text/one-line.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../files/text/source-text.js'
import { builtInNames, builtInScenario } from './library.js'

/** Of a scenario in a record. */
const LONGEST_NAME = 200

/** Of a scenario's file. */
const ENDING = /\.(ya?ml|json)$/i

/**
 * A scenario by its built-in name, or from a YAML or JSON file.
 *
 * @throws ScenarioError with every problem as `file:line:column field: what was found; allowed is ...`.
 */
export async function loadScenario(pathOrName: string): Promise<Scenario> {
  const builtIn = builtInScenario(pathOrName)
  if (builtIn) return scenarioFrom(pathOrName, locateNowhere(pathOrName, builtIn))
  const text = await readTextFile(pathOrName, `, and ${noBuiltInWords(pathOrName)}`)
  const name = basename(pathOrName).replace(ENDING, '')
  if (!isLine(name, LONGEST_NAME)) {
    const found = JSON.stringify(name.length > 60 ? `${name.slice(0, 57)}...` : name)
    throw new ScenarioError([
      `${pathOrName}: the scenario is called as its file is, and found is ${found}; allowed before the ending is ${lineWords(LONGEST_NAME)}.`,
    ])
  }
  const source = readSourceText(pathOrName, text)
  if ((source.data as { readonly format?: unknown } | null)?.format === PACK_FORMAT)
    throw new ScenarioError([
      `${pathOrName}: this is the pack of a contest, and its lane is sealed; dryboard contest open tells its rules.`,
    ])
  const scenario = scenarioFrom(name, source)
  checkOil(scenario.data, source)
  return scenario
}

/** Words for a name that no built-in scenario has: which ones may have been meant, and where all are named. */
export function noBuiltInWords(written: string): string {
  const near = nearestOf(written.replace(ENDING, ''), builtInNames())
  const told = near.length === 0 ? '' : ` (near it: ${near.join(', ')})`
  return `no built-in scenario of that name${told}; dryboard scenario list names them all`
}
