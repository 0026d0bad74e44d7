import { existsSync } from 'node:fs'
import { readKey } from '../../contest/pack/organiser-key.js'
import { openPack, readPack } from '../../contest/pack/pack.js'
import { unsealingOf } from '../../contest/pack/unsealing.js'
import { WriteError } from '../../files/text/atomic-write.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { jsonText } from '../../files/text/json.js'
import { localTime } from '../../files/text/local-time.js'
import { replaceFile } from '../../files/text/replace-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import type { CommandConsole } from '../console/console.js'
import { neededPassphrase } from './passphrase-from.js'

export interface UnsealOptions {
  readonly key: string
  readonly out: string
  readonly passphrase?: string
}

const SHARED = 0o644

/** The organiser ends a contest: publishes the seed, so that everybody can check the commitment and look back on their entry. */
export async function unsealCommand(path: string, options: UnsealOptions, console: CommandConsole): Promise<number> {
  const pack = await readPack(path)
  const key = await readKey(options.key)
  if (key.publicText !== pack.organiser)
    throw new ScenarioError([`${options.key}: another key sealed ${path}, and only that one unseals it.`])
  const passphrase = await neededPassphrase(path, options.passphrase, console)
  if (existsSync(options.out)) throw new WriteError(options.out, 'there is a file already; name another after --out')
  const unsealing = unsealingOf(openPack(path, pack, passphrase), localTime(new Date()), key)
  await replaceFile(options.out, `${jsonText(unsealing)}\n`, SHARED & ~process.umask())
  console.print(`Seed ${unsealing.seed}, as committed to in ${pack.commitment}.`)
  console.tell(`Unsealing written: ${options.out}`)
  return EXIT.fine
}
