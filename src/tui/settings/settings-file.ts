import { readFile } from 'node:fs/promises'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { type Settings, settingsFrom } from './settings.js'

type Environment = Readonly<Record<string, string | undefined>>

const FILE_STEM = 'settings'

/** DRYBOARD_CONFIG, else the user's configuration folder as the XDG base directory specification 0.8 has it. */
function settingsFolder(environment: Environment): string {
  if (environment.DRYBOARD_CONFIG) return environment.DRYBOARD_CONFIG
  const shared = environment.XDG_CONFIG_HOME
  return join(shared?.startsWith('/') ? shared : join(homedir(), '.config'), 'dryboard')
}

/** The settings as kept; the usual ones where none are or where they cannot be read. */
export async function readSettings(environment: Environment): Promise<Settings> {
  try {
    return settingsFrom(JSON.parse(await readFile(join(settingsFolder(environment), `${FILE_STEM}.json`), 'utf8')))
  } catch {
    return settingsFrom(null)
  }
}

/** Keeps the settings; the library for it is loaded only now, for opening the trainer has to be quick. */
export async function writeSettings(environment: Environment, settings: Settings): Promise<void> {
  const { default: Conf } = await import('conf')
  const store = new Conf({ cwd: settingsFolder(environment), configName: FILE_STEM, clearInvalidConfig: true })
  store.store = { ...settings }
}
