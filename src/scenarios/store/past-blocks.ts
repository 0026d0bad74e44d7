import { readdir, readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { countPins, FULL_RACK } from '../../sim/world/pins/leaves.js'
import { nextBall, type Scoring, tally } from '../../sim/world/scoring/game.js'

/** A block bowled before, as a list shows it; nothing of it has been played again yet. */
export interface PastBlock {
  readonly path: string
  readonly title: string
  readonly seed: string
  readonly bowledAt: Date
  readonly throws: number
  /** Scores of its games as far as they were bowled. */
  readonly games: readonly number[]
}

/** How many are listed: the latest. */
const MOST_LISTED = 200

const isRecord = (name: string): boolean => name.endsWith('.json') && !name.startsWith('.')

/** Whether there is anything to list. */
export async function hasPastBlocks(folder: string): Promise<boolean> {
  return (await namesIn(folder)).length > 0
}

/** Blocks filed in a folder, latest first. A file that tells nothing of a block is left out; opening one checks all of it. */
export async function listPastBlocks(folder: string): Promise<PastBlock[]> {
  const names = await namesIn(folder)
  const files = await Promise.all(
    names.map(async (name) => ({ path: join(folder, name), when: (await stat(join(folder, name))).mtime })),
  )
  const latest = files.sort((a, b) => b.when.getTime() - a.when.getTime()).slice(0, MOST_LISTED)
  const blocks = await Promise.all(latest.map(({ path, when }) => glance(path, when)))
  return blocks.filter((block) => block !== null)
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).filter(isRecord)
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return []
    throw fault
  }
}

interface Glanced {
  readonly seed: string
  readonly scenario: {
    readonly title: string
    readonly lanes: readonly unknown[]
    readonly practiceThrows: number
    readonly scoring: Scoring
  }
  readonly decisions: readonly { readonly standing: number }[]
}

async function glance(path: string, bowledAt: Date): Promise<PastBlock | null> {
  try {
    const { seed, scenario, decisions } = JSON.parse(await readFile(path, 'utf8')) as Glanced
    const practice = scenario.practiceThrows * scenario.lanes.length
    const left = decisions.slice(practice).map(({ standing }) => standing)
    const games = scoresOf(scenario.scoring, left)
    return { path, title: String(scenario.title), seed: String(seed), bowledAt, throws: decisions.length, games }
  } catch {
    return null
  }
}

/** Scores out of what each ball left standing. */
export function scoresOf(scoring: Scoring, left: readonly number[]): number[] {
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
  return games.map((game) => tally(scoring, game).total)
}
