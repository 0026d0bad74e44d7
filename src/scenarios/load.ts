import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { builtInNames, builtInScenario } from './library/library.js'
import { type Scenario, scenarioFrom } from './scenario.js'
import { ScenarioError } from './scenario-error.js'
import { locateNowhere, readSourceText } from './source-text.js'

const LARGEST_FILE_BYTES = 1_000_000

/**
 * A scenario by its built-in name, or from a YAML or JSON file.
 *
 * @throws ScenarioError with every problem as `file:line:column field: what was found; allowed is ...`.
 */
export async function loadScenario(pathOrName: string): Promise<Scenario> {
  const builtIn = builtInScenario(pathOrName)
  if (builtIn) return scenarioFrom(pathOrName, locateNowhere(pathOrName, builtIn))
  const text = await readText(pathOrName)
  const name = basename(pathOrName).replace(/\.(ya?ml|json)$/i, '')
  return scenarioFrom(name, readSourceText(pathOrName, text))
}

async function readText(path: string): Promise<string> {
  let bytes: Buffer
  try {
    bytes = await readFile(path)
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code
    const known = `built-in scenarios are ${builtInNames().join(', ')}`
    if (code === 'ENOENT') {
      throw new ScenarioError(
        [`${path}: there is no such file, and no built-in scenario of that name; ${known}.`],
        true,
      )
    }
    throw new ScenarioError([`${path}: cannot be read (${code ?? String(cause)}).`], true)
  }
  if (bytes.length > LARGEST_FILE_BYTES) {
    throw new ScenarioError([`${path}: found ${bytes.length} bytes; allowed is at most ${LARGEST_FILE_BYTES}.`])
  }
  return bytes.toString('utf8').replace(/^\uFEFF/, '')
}
