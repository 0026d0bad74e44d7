import { joinHost } from '../../contest/host/client.js'
import { EXIT, SIGNAL_EXIT } from '../../files/text/exit-codes.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { openingLines } from '../../plain/opening-lines.js'
import { playLines } from '../../plain/play-lines.js'
import type { JoinedBlock } from '../../store/joined-block.js'
import { nameIfReadable } from '../../store/player-name.js'
import { HELD_BACK_WORDS } from '../../words/contest-words.js'
import type { CommandConsole } from '../console/console.js'
import { notThrown } from '../play.js'

export interface JoinOptions {
  /** The host's code, or the player's own to come back. */
  readonly code?: string
  readonly player?: string
  readonly plain?: boolean
  readonly motion?: boolean
}

const OWN_CODE = /^[A-Za-z0-9_-]{32}$/

/** Plays on a lane that a host has: on screen or line by line, each choice sent and answered. */
export async function joinCommand(
  url: string,
  { code, player: named, plain, motion }: JoinOptions,
  console: CommandConsole,
  openScreen: (options: { readonly joined: JoinedBlock; readonly noMotion: boolean }) => Promise<number>,
): Promise<number> {
  if (!/^https?:\/\/[^\s/]+/.test(url) || !URL.canParse(url))
    throw new ScenarioError([`${url}: this is no address of a host; allowed is one such as http://192.168.1.20:8610.`])
  if (code === undefined) throw new ScenarioError([`${url}: the host's code is needed; say --code CODE.`])
  const isBack = OWN_CODE.test(code)
  const player = isBack ? undefined : await nameIfReadable(named, console.environment, console.tell)
  if (!isBack && player === undefined)
    throw new ScenarioError([`${url}: a contest needs to know who plays; say --player NAME.`])
  const { block, token, rules } = await joinHost({ url, by: isBack ? { token: code } : { code, player: player! } })
  console.print(block.title)
  for (const line of rules) console.print(`  ${line}`)
  console.print(`To come back: dryboard play --join ${url} --code ${token}`)
  if (console.interactive && !plain) return openScreen({ joined: block, noMotion: motion === false })
  const begun = block.states.at(-1)!
  console.print('')
  for (const line of openingLines(block.scenario, null)) console.print(line)
  console.print(HELD_BACK_WORDS)
  if (begun.throws.length > 0) console.print(`It goes on after ${begun.throws.length} throws.`)
  const state = begun.spot
    ? await playLines(begun, {
        lines: console.lines(),
        say: console.print,
        object: console.print,
        keep: async () => {},
        notKept: (fault) => notThrown(fault, console),
        grade: false,
        advance: block.throwNext,
      })
    : begun
  console.print(
    state.spot ? 'It stops here; the host keeps your entry for you to come back to.' : 'The host has your entry.',
  )
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}
