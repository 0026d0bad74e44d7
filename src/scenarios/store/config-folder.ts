import { join } from 'node:path'
import { homeFolder } from './home-folder.js'

/**
 * Where what a person has set lies: DRYBOARD_CONFIG, else with everything else in DRYBOARD_DATA, else the user's configuration
 * folder as the XDG base directory specification 0.8 has it.
 */
export function configFolder(environment: Readonly<Record<string, string | undefined>>): string {
  if (environment.DRYBOARD_CONFIG) return environment.DRYBOARD_CONFIG
  if (environment.DRYBOARD_DATA) return join(environment.DRYBOARD_DATA, 'config')
  const shared = environment.XDG_CONFIG_HOME
  return join(shared?.startsWith('/') ? shared : join(homeFolder(), '.config'), 'dryboard')
}
