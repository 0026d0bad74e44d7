import { rememberContest } from '../../contest/entry/enter.js'
import { checkModel, openPack, packDigest, readPack } from '../../contest/pack/pack.js'
import { unsealingFromText } from '../../contest/pack/unsealing.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { dataFolder } from '../../store/data-folder.js'
import { knownContests, noteContest } from '../../store/sealed-lanes.js'
import { keyCode } from '../../store/signing.js'
import { HELD_BACK_WORDS, HONOUR_WORDS, rulesLines } from '../../words/contest-words.js'
import type { CommandConsole } from '../console/console.js'
import { passphraseFrom } from './passphrase-from.js'

export interface OpenOptions {
  readonly passphrase?: string
  readonly unsealing?: string
  readonly data?: string
}

/** Tells a contest's rules; with the passphrase checks lane and luck against the commitment; with the organiser's unsealing ends it here. */
export async function openCommand(path: string, options: OpenOptions, console: CommandConsole): Promise<number> {
  const pack = await readPack(path)
  const { title, notes } = pack.rules
  const data = dataFolder(options.data, console.environment)
  console.print(title)
  if (notes !== '') console.print(notes)
  console.print(`On ${pack.lane}.`)
  for (const line of rulesLines(pack.rules)) console.print(`  ${line}`)
  console.print(`Pack ${packDigest(pack)}`)
  console.print(`Commitment ${pack.commitment}`)
  console.print(`Sealed at ${pack.sealedAt} by the organiser's key ${keyCode(pack.organiser)}; the signature is good.`)
  if (options.unsealing !== undefined) {
    const { unsealedAt } = unsealingFromText(options.unsealing, await readTextFile(options.unsealing), pack)
    const digest = packDigest(pack)
    const known = knownContests(data).find((one) => one.pack === digest)
    const { deadline } = pack.rules
    await noteContest(data, {
      ...(known ?? { pack: digest, title, deadline, oils: [], entries: [] }),
      unsealed: true,
    })
    console.print(
      `Unsealed at ${unsealedAt}, and the seed is the one that was committed to: its lane and your grades can be looked at.`,
    )
    return EXIT.fine
  }
  const passphrase = await passphraseFrom(options.passphrase, console)
  if (passphrase === null) {
    console.print('The lane is sealed. With the passphrase: dryboard contest play.')
    return EXIT.fine
  }
  const opened = openPack(path, pack, passphrase)
  checkModel(path, pack)
  await rememberContest(data, opened)
  console.print('The passphrase fits, and lane and luck are those that were committed to.')
  console.print(HELD_BACK_WORDS)
  console.print(HONOUR_WORDS)
  return EXIT.fine
}
