import { type Entered, enter } from '../../contest/entry/enter.js'
import { openPack, readPack } from '../../contest/pack/pack.js'
import { EXIT, SIGNAL_EXIT } from '../../files/text/exit-codes.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { openingLines } from '../../plain/opening-lines.js'
import { playLines } from '../../plain/play-lines.js'
import { blockStore } from '../../store/block-store.js'
import { dataFolder, withDataFolder } from '../../store/data-folder.js'
import { nameIfReadable } from '../../store/player-name.js'
import { HELD_BACK_WORDS, rulesLines } from '../../words/contest-words.js'
import type { CommandConsole } from '../console/console.js'
import { notThrown } from '../play.js'
import { neededPassphrase } from './passphrase-from.js'

export interface ContestPlayOptions {
  readonly passphrase?: string
  readonly player?: string
  readonly hand?: 'right' | 'left'
  readonly level?: string
  readonly data?: string
  readonly script?: string
  /** Hands in what stands, finished or not. */
  readonly handIn?: boolean
}

/** Sits down to a contest: checks pack and passphrase, and begins or goes on with the player's entry. @throws ScenarioError, WriteError */
export async function sitDown(path: string, options: ContestPlayOptions, console: CommandConsole): Promise<Entered> {
  const pack = await readPack(path)
  const player = await nameIfReadable(options.player, withDataFolder(console.environment, options.data), console.tell)
  const passphrase = await neededPassphrase(path, options.passphrase, console)
  const data = dataFolder(options.data, console.environment)
  const store = blockStore(data)
  await store.tryOut()
  const bowler = { hand: options.hand, level: options.level }
  return enter({ path, opened: openPack(path, pack, passphrase), player, bowler, store, data, now: new Date() })
}

/** An entry line by line, without grades; the record it files is what is handed in. */
export async function contestPlayCommand(
  path: string,
  options: ContestPlayOptions,
  console: CommandConsole,
): Promise<number> {
  const script = options.script === undefined ? null : await readTextFile(options.script)
  const { open, code, isResumed, rules } = await sitDown(path, options, console)
  try {
    console.print(rules.title)
    for (const line of rulesLines(rules)) console.print(`  ${line}`)
    console.print(`Entry code ${code}: tell it to the organiser.`)
    console.print('')
    for (const line of openingLines(open.scenario, null)) console.print(line)
    console.print(HELD_BACK_WORDS)
    if (isResumed) console.print(`It goes on after ${open.begun.throws.length} throws, and the entry says so.`)
    if (open.begun.spot && !options.handIn) console.print('Type ? for what you can say.')
    const state =
      !open.begun.spot || options.handIn
        ? open.begun
        : await playLines(open.begun, {
            lines: script === null ? console.lines() : linesOf(script),
            say: console.print,
            object: (sentence) => {
              if (script !== null) throw new ScenarioError([`${options.script}: ${sentence}`])
              console.print(sentence)
            },
            keep: open.keep,
            notKept: (fault) => notThrown(fault, console),
            grade: false,
          })
    if (state.spot && !options.handIn) {
      console.print('The entry stops here, unfinished. It goes on where it stands with the same command, and says so.')
    } else if (state.throws.length > 0) {
      console.tell(`Record kept: ${await open.file(state)}`)
      console.print('Hand that file in to the organiser as it is.')
    }
  } finally {
    await open.leave()
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

async function* linesOf(text: string): AsyncIterable<string> {
  const lines = text.split(/\r?\n/)
  yield* lines.at(-1) === '' ? lines.slice(0, -1) : lines
}
