import { randomInt } from 'node:crypto'
import { networkInterfaces } from 'node:os'
import { openRoom } from '../../contest/host/room.js'
import { serveRoom } from '../../contest/host/server.js'
import { readKey } from '../../contest/pack/organiser-key.js'
import { checkModel, openPack, readPack } from '../../contest/pack/pack.js'
import { EXIT, SIGNAL_EXIT } from '../../files/text/exit-codes.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { recordsFolder } from '../../store/data-folder.js'
import { rulesLines } from '../../words/contest-words.js'
import type { CommandConsole } from '../console/console.js'
import { neededPassphrase } from './passphrase-from.js'

export interface HostOptions {
  readonly key: string
  readonly port: number
  readonly lan?: boolean
  readonly entries: string
  readonly passphrase?: string
}

const CODE_DIGITS = 6

/** Hosts a contest until it is told to stop: players join over HTTP, and the board is a page. */
export async function hostCommand(path: string, options: HostOptions, console: CommandConsole): Promise<number> {
  const pack = await readPack(path)
  const key = await readKey(options.key)
  if (key.publicText !== pack.organiser)
    throw new ScenarioError([`${options.key}: another key sealed ${path}, and only that one vouches for its entries.`])
  checkModel(path, pack)
  const passphrase = await neededPassphrase(path, options.passphrase, console)
  const opened = openPack(path, pack, passphrase)
  const joinCode = String(randomInt(10 ** CODE_DIGITS)).padStart(CODE_DIGITS, '0')
  const room = await openRoom({ opened, key, folder: options.entries, joinCode })
  const server = await serveRoom(room, { port: options.port, host: options.lan ? '0.0.0.0' : '127.0.0.1' })
  console.print(pack.rules.title)
  for (const line of rulesLines(pack.rules)) console.print(`  ${line}`)
  for (const address of options.lan ? addressesHere() : ['127.0.0.1'])
    console.print(`Join: dryboard play --join http://${address}:${server.port} --code ${joinCode} --player NAME`)
  console.print(
    'The board is the page at that address. What goes over the network is not encrypted: host on a network you trust.',
  )
  console.print(`Entries are written to ${recordsFolder(options.entries)}. Type quit to stop.`)
  try {
    for await (const line of console.lines()) if (/^\s*q(uit)?\s*$/i.test(line)) break
  } finally {
    await server.close()
    await room.close()
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

const addressesHere = (): string[] =>
  Object.values(networkInterfaces()).flatMap((all) =>
    (all ?? []).filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address),
  )
