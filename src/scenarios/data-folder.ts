import { homedir } from 'node:os'
import { join } from 'node:path'

/**
 * Where records are kept: the folder named on the command line, else by DRYBOARD_DATA, else the user's data folder as
 * the XDG base directory specification 0.8 has it (which ignores a relative XDG_DATA_HOME).
 */
export function recordsFolder(
  named: string | undefined,
  environment: Readonly<Record<string, string | undefined>>,
): string {
  const own = named ?? environment.DRYBOARD_DATA
  if (own) return join(own, 'records')
  const shared = environment.XDG_DATA_HOME
  const base = shared?.startsWith('/') ? shared : join(homedir(), '.local', 'share')
  return join(base, 'dryboard', 'records')
}
