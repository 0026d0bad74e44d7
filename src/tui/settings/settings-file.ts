import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { configFolder } from '../../scenarios/config-folder.js'
import { readTextFile } from '../../scenarios/read-text-file.js'
import { ScenarioError } from '../../scenarios/scenario-error.js'
import { type Settings, settingsFault, settingsFrom } from './settings.js'

type Environment = Readonly<Record<string, string | undefined>>

const FILE_STEM = 'settings'

/**
 * The settings as kept; the usual ones where none are. A file that cannot be read is refused and left as it is: going on
 * without it would replace it at the next change.
 *
 * @throws ScenarioError
 */
export async function readSettings(environment: Environment): Promise<Settings> {
  const path = join(configFolder(environment), `${FILE_STEM}.json`)
  if (!existsSync(path)) return settingsFrom(null)
  const data = parsed(path, await readTextFile(path))
  const fault = settingsFault(data)
  if (fault !== null) throw new ScenarioError([`${path}${fault}; mend the file, or delete it for the usual settings.`])
  return settingsFrom(data)
}

function parsed(path: string, text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    throw new ScenarioError([`${path}: this is not JSON; mend the file, or delete it for the usual settings.`])
  }
}

/** Keeps the settings; the library for it is loaded only now, for opening the trainer has to be quick. */
export async function writeSettings(environment: Environment, settings: Settings): Promise<void> {
  const { default: Conf } = await import('conf')
  const store = new Conf({ cwd: configFolder(environment), configName: FILE_STEM })
  store.store = { ...settings }
}
