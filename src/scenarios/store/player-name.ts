import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { isLine, lineWords } from '../files/text/one-line.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { replaceFile } from '../files/text/replace-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { configFolder } from './config-folder.js'

type Environment = Readonly<Record<string, string | undefined>>

/** Names the player where the command line does not. */
export const PLAYER_VARIABLE = 'DRYBOARD_PLAYER'

const FORMAT = 'dryboard-profile'
const VERSION = 1
const LONGEST_NAME = 60
/** What a player's name may be, in words. */
export const ALLOWED_NAME = lineWords(LONGEST_NAME)

/** Whether a text can stand for a player in a record. */
export const isPlayerName = (text: unknown): text is string =>
  typeof text === 'string' && isLine(text, LONGEST_NAME) && text.trim() !== ''

/**
 * Who plays: named on the command line, else DRYBOARD_PLAYER, else the name in the profile; undefined where nobody has said.
 *
 * @throws ScenarioError when the variable or the profile holds no name
 */
export async function playerName(named: string | undefined, environment: Environment): Promise<string | undefined> {
  const said = named ?? environment[PLAYER_VARIABLE]
  if (said === undefined || said === '') return readProfile(profilePath(environment))
  if (!isPlayerName(said)) {
    throw new ScenarioError([`${PLAYER_VARIABLE}: found ${JSON.stringify(said)}; allowed is ${ALLOWED_NAME}.`])
  }
  return said
}

/**
 * The same for a block about to be played: a profile that cannot be read is told of and keeps nobody from playing.
 *
 * @throws ScenarioError when the variable holds no name
 */
export async function nameIfReadable(
  named: string | undefined,
  environment: Environment,
  tell: (sentence: string) => void,
): Promise<string | undefined> {
  try {
    return await playerName(named, environment)
  } catch (fault) {
    const isProfile = (named ?? environment[PLAYER_VARIABLE] ?? '') === ''
    if (!(fault instanceof ScenarioError) || !isProfile) throw fault
    for (const sentence of fault.sentences) tell(`${sentence} The block will carry no name.`)
    return undefined
  }
}

/** Keeps the name that later records carry, and returns the file it is in. @throws WriteError */
export async function keepPlayerName(player: string, environment: Environment): Promise<string> {
  const path = profilePath(environment)
  await replaceFile(path, `${JSON.stringify({ format: FORMAT, version: VERSION, player }, null, 1)}\n`)
  return path
}

const profilePath = (environment: Environment): string => join(configFolder(environment), 'profile.json')

/** Checked by hand: the start of the screen waits for it, and one field needs no schema library. */
async function readProfile(path: string): Promise<string | undefined> {
  if (!existsSync(path)) return undefined
  let data: unknown
  try {
    data = JSON.parse(await readTextFile(path))
  } catch (fault) {
    if (fault instanceof ScenarioError) throw fault
    throw new ScenarioError([`${path}: this is not JSON; dryboard player NAME writes it anew.`])
  }
  const { format, version, player } = (data ?? {}) as Record<string, unknown>
  if (format !== FORMAT || version !== VERSION) {
    throw new ScenarioError([
      `${path}: format and version are not "${FORMAT}" and ${VERSION}, the only ones this program knows.`,
    ])
  }
  if (!isPlayerName(player)) {
    throw new ScenarioError([`${path} player: found ${JSON.stringify(player)}; allowed is ${ALLOWED_NAME}.`])
  }
  return player
}
