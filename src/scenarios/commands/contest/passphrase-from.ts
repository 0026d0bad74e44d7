import { ScenarioError } from '../../files/text/scenario-error.js'
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

/** The same where nothing goes on without it. @param path of the pack, for the sentence; @throws ScenarioError where nobody says one */
export async function neededPassphrase(
  path: string,
  named: string | undefined,
  console: CommandConsole,
): Promise<string> {
  const passphrase = await passphraseFrom(named, console)
  if (passphrase === null) throw new ScenarioError([`${path}: the passphrase is needed; say --passphrase WORDS.`])
  return passphrase
}
