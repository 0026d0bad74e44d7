import { basename } from 'node:path'
import { builtInNames, builtInScenario } from './library/library.js'
import { nearestOf } from './nearest.js'
import { readTextFile } from './read-text-file.js'
import { type Scenario, scenarioFrom } from './scenario.js'
import { locateNowhere, readSourceText } from './source-text.js'

/**
 * A scenario by its built-in name, or from a YAML or JSON file.
 *
 * @throws ScenarioError with every problem as `file:line:column field: what was found; allowed is ...`.
 */
export async function loadScenario(pathOrName: string): Promise<Scenario> {
  const builtIn = builtInScenario(pathOrName)
  if (builtIn) return scenarioFrom(pathOrName, locateNowhere(pathOrName, builtIn))
  const known = `, and no built-in scenario of that name${nearWords(pathOrName)}; dryboard scenario list names them all`
  const text = await readTextFile(pathOrName, known)
  const name = basename(pathOrName).replace(/\.(ya?ml|json)$/i, '')
  return scenarioFrom(name, readSourceText(pathOrName, text))
}

/** Built-in names that may have been meant, to be told. */
export function nearWords(written: string): string {
  const near = nearestOf(written.replace(/\.(ya?ml|json)$/i, ''), builtInNames())
  return near.length === 0 ? '' : ` (near it: ${near.join(', ')})`
}
