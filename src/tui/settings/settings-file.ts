import { basename, join } from 'node:path'
import { setAside } from '../../scenarios/files/text/set-aside.js'
import { textAt } from '../../scenarios/files/text/text-at.js'
import { configFolder } from '../../scenarios/store/config-folder.js'
import { DEFAULT_SETTINGS, type Settings, settingsFault, settingsFrom } from './settings.js'

type Environment = Readonly<Record<string, string | undefined>>

const FILE_STEM = 'settings'
const pathIn = (environment: Environment): string => join(configFolder(environment), `${FILE_STEM}.json`)

/**
 * The settings as kept; the usual ones where there are none, and where they cannot be read: `problem` says why then, else it
 * is empty. The file is left as it is.
 */
export async function readSettings(environment: Environment): Promise<{ settings: Settings; problem: string }> {
  const path = pathIn(environment)
  let text: string | null
  try {
    text = await textAt(path)
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault)
    const problem = `The usual settings are used, for ${basename(path)} cannot be read (${code}).`
    return { settings: DEFAULT_SETTINGS, problem }
  }
  if (text === null) return { settings: DEFAULT_SETTINGS, problem: '' }
  const data = parsed(text)
  const fault = data === undefined ? ': this is not JSON' : settingsFault(data)
  if (fault === null) return { settings: settingsFrom(data), problem: '' }
  return { settings: DEFAULT_SETTINGS, problem: `The usual settings are used, for ${basename(path)}${fault}.` }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/**
 * Keeps the settings, and returns where a file that could not be read lies now, or null. The library for it is loaded only now,
 * for opening the trainer has to be quick.
 */
export async function writeSettings(environment: Environment, settings: Settings): Promise<string | null> {
  const { problem } = await readSettings(environment)
  const aside = problem === '' ? null : await setAside(pathIn(environment))
  const { default: Conf } = await import('conf')
  const store = new Conf({ cwd: configFolder(environment), configName: FILE_STEM })
  // What a later program has set stays.
  store.store = { ...store.store, ...settings }
  return aside
}
