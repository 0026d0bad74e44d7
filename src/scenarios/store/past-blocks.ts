import { join } from 'node:path'
import { countPins, FULL_RACK } from '../../sim/world/pins/leaves.js'
import { type GameLine, nextBall, type Scoring, tally } from '../../sim/world/scoring/game.js'
import { type FileLayer, NODE_FILES } from '../files/text/file-layer.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { UNKNOWN_ORIGIN } from './origin.js'
import type { BlockRecord } from './record.js'
import { type Compared, supersededBy } from './superseded.js'

/** A block bowled before, as a list shows it; nothing of it has been played again yet. */
export interface PastBlock {
  readonly path: string
  /** Of its scenario. */
  readonly name: string
  readonly title: string
  readonly seed: string
  readonly bowledAt: Date
  readonly throws: number
  /** Scores of its games as far as they were bowled. */
  readonly games: readonly number[]
  /** Frames bowled to their end, in all games. */
  readonly frames: number
  /** Whether it carries the player's own name, or nobody's, and was bowled by a person. */
  readonly isOwn: boolean
  /** A drill answers a position and is no block of its own; a short block ends a session of practice. */
  readonly kind: 'block' | 'drill' | 'short-block'
}

/** How many are listed: the latest. */
const MOST_LISTED = 200

const isRecord = (name: string): boolean =>
  name.endsWith('.json') && !name.startsWith('.') && !name.endsWith('.notes.json')

/** Whether there is anything to list; a folder that cannot be read has nothing. */
export async function hasPastBlocks(folder: string, files: FileLayer = NODE_FILES): Promise<boolean> {
  return (await namesIn(folder, files).catch(() => [])).length > 0
}

/**
 * Blocks filed in a folder, latest first, each once. A file that tells nothing of a block is left out; opening one checks all of it.
 *
 * @param of `player` is who looks, so that their own blocks can be told from others'
 * @throws ScenarioError where the folder cannot be read
 */
export async function listPastBlocks(
  folder: string,
  { player, files = NODE_FILES }: { readonly player?: string | undefined; readonly files?: FileLayer } = {},
): Promise<PastBlock[]> {
  const names = await namesIn(folder, files)
  const found = await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name)
      const when = await files.stat(path).catch(() => null)
      return when?.isFile() ? [{ path, when: when.mtime }] : []
    }),
  )
  const latest = found
    .flat()
    .sort((a, b) => b.when.getTime() - a.when.getTime())
    .slice(0, MOST_LISTED)
  const glanced = (await Promise.all(latest.map(({ path, when }) => glance(path, when, player)))).filter(
    (one) => one !== null,
  )
  const replaced = supersededBy(glanced.map(({ compared }) => compared))
  return glanced.flatMap(({ block }, place) => (replaced[place] === null ? [block] : []))
}

async function namesIn(folder: string, files: FileLayer): Promise<string[]> {
  try {
    return (await files.readdir(folder)).filter(isRecord)
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code
    if (code === 'ENOENT') return []
    throw new ScenarioError([`${folder}: this folder cannot be read (${code ?? String(fault)}).`], true)
  }
}

interface Glanced {
  readonly name: string
  readonly seed: string
  readonly scenario: {
    readonly title: string
    readonly lanes: readonly unknown[]
    readonly practiceThrows: number
    readonly scoring: Scoring
  }
  readonly decisions: BlockRecord['decisions']
}

async function glance(
  path: string,
  bowledAt: Date,
  me: string | undefined,
): Promise<{ block: PastBlock; compared: Compared } | null> {
  try {
    const data = JSON.parse(await readTextFile(path)) as Glanced &
      Partial<Omit<Compared, 'origin'>> &
      Partial<Pick<BlockRecord, 'origin'>>
    const { name, seed, scenario, decisions } = data
    const practice = scenario.practiceThrows * scenario.lanes.length
    const left = decisions.slice(practice).map(({ standing }) => standing)
    const bowled = gamesOf(scenario.scoring, left)
    const { scenarioHash = '', player, block = null, origin = UNKNOWN_ORIGIN } = data
    return {
      block: {
        path,
        name: String(name),
        title: String(scenario.title),
        seed: String(seed),
        bowledAt,
        throws: decisions.length,
        games: bowled.map((game) => game.total),
        frames: bowled.reduce((sum, game) => sum + game.frames.filter(({ complete }) => complete).length, 0),
        isOwn: origin.cameToBe !== 'auto' && (player === undefined || player === me),
        kind: origin.cameToBe === 'drill' || origin.cameToBe === 'short-block' ? origin.cameToBe : 'block',
      },
      compared: { scenarioHash, seed, player, block, origin, decisions },
    }
  } catch {
    return null
  }
}

/** Scores out of what each ball left standing. */
export const scoresOf = (scoring: Scoring, left: readonly number[]): number[] =>
  gamesOf(scoring, left).map(({ total }) => total)

function gamesOf(scoring: Scoring, left: readonly number[]): GameLine[] {
  const games: number[][][] = []
  let standing = FULL_RACK
  for (const after of left) {
    let game = games.at(-1)
    let next = game && nextBall(scoring, game)
    if (!game || !next) {
      game = []
      games.push(game)
      next = nextBall(scoring, game)
    }
    if (!next) break
    if (next.standingReset) standing = FULL_RACK
    game[next.frame - 1] ??= []
    game[next.frame - 1]!.push(countPins(standing) - countPins(after))
    standing = after
  }
  return games.map((game) => tally(scoring, game))
}
