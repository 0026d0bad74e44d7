import { openPack, readPack } from '../../contest/pack/pack.js'
import { checkEntry } from '../../contest/standings/check-entry.js'
import { EXIT } from '../../files/text/exit-codes.js'
import type { CommandConsole } from '../console/console.js'
import { neededPassphrase } from './passphrase-from.js'

/** Checks entries each by itself, a line of JSON each. */
export async function contestCheckCommand(
  paths: readonly string[],
  options: { readonly pack: string; readonly passphrase?: string },
  console: CommandConsole,
): Promise<number> {
  const pack = await readPack(options.pack)
  const passphrase = await neededPassphrase(options.pack, options.passphrase, console)
  const opened = openPack(options.pack, pack, passphrase)
  let isRefused = false
  for (const path of paths) {
    const {
      thrown: _thrown,
      figures: _figures,
      ...entry
    } = await checkEntry(path, opened, { luck: false, accounts: null })
    isRefused ||= entry.status === 'refused'
    console.print(JSON.stringify(entry))
  }
  return isRefused ? EXIT.checkFailed : EXIT.fine
}
