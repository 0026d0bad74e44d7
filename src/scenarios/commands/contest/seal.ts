import { randomBytes } from 'node:crypto'
import { existsSync } from 'node:fs'
import { keyAt } from '../../contest/pack/organiser-key.js'
import { packDigest, sealPack } from '../../contest/pack/pack.js'
import { freshPassphrase } from '../../contest/pack/passphrase.js'
import { readRules } from '../../contest/pack/rules-file.js'
import { WriteError } from '../../files/text/atomic-write.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { jsonText } from '../../files/text/json.js'
import { localTime } from '../../files/text/local-time.js'
import { replaceFile } from '../../files/text/replace-file.js'
import { keyCode } from '../../store/signing.js'
import { HONOUR_WORDS, rulesLines } from '../../words/contest-words.js'
import type { CommandConsole } from '../console/console.js'

export interface SealOptions {
  readonly key: string
  readonly out: string
  /** A fresh one if left out. */
  readonly passphrase?: string
}

const CONTEST_BYTES = 12
const SEED_BYTES = 32
const SHARED = 0o644

/** Seals contest rules into a pack: lane and luck under a passphrase, all of it signed. */
export async function sealCommand(path: string, options: SealOptions, console: CommandConsole): Promise<number> {
  const { rules, scenario } = await readRules(path)
  if (existsSync(options.out))
    throw new WriteError(options.out, 'there is a file already; a pack is never written over')
  const { key, isNew } = await keyAt(options.key)
  const passphrase = options.passphrase ?? freshPassphrase()
  const pack = sealPack({
    contest: randomBytes(CONTEST_BYTES).toString('hex'),
    sealedAt: localTime(new Date()),
    rules,
    scenario,
    seed: randomBytes(SEED_BYTES).toString('hex'),
    passphrase,
    key,
  })
  await replaceFile(options.out, `${jsonText(pack)}\n`, SHARED & ~process.umask())
  console.print(rules.title)
  for (const line of rulesLines(rules)) console.print(`  ${line}`)
  console.print(`Pack ${packDigest(pack)}`)
  console.print(`Commitment ${pack.commitment}`)
  console.print(`Organiser's key ${keyCode(key.publicText)}`)
  console.print(`Passphrase, to be read out at the start and not before: ${passphrase}`)
  console.print(HONOUR_WORDS)
  if (isNew)
    console.tell(`A new organiser's key was made: ${options.key}. Keep it to yourself; it signs your contests.`)
  console.tell(`Pack written: ${options.out}`)
  return EXIT.fine
}
