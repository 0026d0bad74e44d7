import { basename, dirname, join, resolve } from 'node:path'
import { homeFolder } from './home-folder.js'

/**
 * Where the program keeps things: the folder named on the command line, else DRYBOARD_DATA, else the user's data folder
 * as the XDG base directory specification 0.8 has it (which ignores a relative XDG_DATA_HOME).
 */
export function dataFolder(
  named: string | undefined,
  environment: Readonly<Record<string, string | undefined>>,
): string {
  const own = named ?? environment.DRYBOARD_DATA
  if (own) return own
  const shared = environment.XDG_DATA_HOME
  const base = shared?.startsWith('/') ? shared : join(homeFolder(), '.local', 'share')
  return join(base, 'dryboard')
}

type Environment = Readonly<Record<string, string | undefined>>

/** The environment as if the folder named on the command line had been named there: then settings and name lie in it too. */
export function withDataFolder(environment: Environment, named: string | undefined): Environment {
  return named === undefined ? environment : { ...environment, DRYBOARD_DATA: named }
}

/** Finished and stopped blocks, one file each. */
export function recordsFolder(data: string): string {
  return join(data, 'records')
}

/** Where what the player said of a block lies once it is filed: a file under the record's own name. */
export function saidWithRecord(data: string, recordPath: string): string {
  return join(data, 'notes', basename(recordPath))
}

/** The same of a record found by its path alone; null where it lies in no data folder's records. */
export function saidOfRecord(recordPath: string): string | null {
  const folder = dirname(resolve(recordPath))
  const data = dirname(folder)
  return folder === recordsFolder(data) ? saidWithRecord(data, recordPath) : null
}

/** Debriefs of records that were reviewed; they can be made again. */
export function debriefsFolder(data: string): string {
  return join(data, 'debriefs')
}
