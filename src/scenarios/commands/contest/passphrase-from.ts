import type { CommandConsole } from '../console/console.js'

/** Names the passphrase where the command line does not. */
const PASSPHRASE_VARIABLE = 'DRYBOARD_PASSPHRASE'

/**
 * The passphrase of a contest: named on the command line, else in the environment, else asked of whoever sits at the keys; null where
 * nobody says one.
 */
export async function passphraseFrom(named: string | undefined, console: CommandConsole): Promise<string | null> {
  const said = named ?? (console.environment[PASSPHRASE_VARIABLE] || undefined)
  if (said !== undefined) return said
  if (!console.interactive) return null
  console.print('Passphrase:')
  for await (const line of console.lines()) return line.trim() === '' ? null : line
  return null
}
