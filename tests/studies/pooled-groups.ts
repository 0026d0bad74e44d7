import type { Weighed } from '../../src/scenarios/reports/review/estimate.js'
import { pooledMeans } from '../../src/scenarios/reports/review/pooled.js'
import { drawNormal, type RandomSource, stream } from '../../src/sim/random.js'

/**
 * Whether partial pooling of players' block figures (reports/review/pooled.ts) covers what it says and is worth having: simulated groups
 * with known truth, 2 to 8 blocks a player, 8 to 24 choices a block. `npm run study pooled-groups`, 500 groups of each size:
 *
 *     world          players   80 % holds   squared error pooled   separate
 *     alike                4       83.0 %                   6.08       8.63
 *     alike                5       88.0 %                   4.36       8.18
 *     alike                8       89.1 %                   2.90       8.28
 *     alike               20       88.0 %                   1.63       8.43
 *     middling             4       82.2 %                   6.75       8.38
 *     middling             5       79.6 %                   6.32       8.66
 *     middling             8       80.2 %                   5.26       8.31
 *     middling            20       79.6 %                   4.72       8.48
 *     apart                4       78.8 %                   7.76       8.46
 *     apart                5       79.6 %                   7.35       8.26
 *     apart                8       79.0 %                   7.46       8.93
 *     apart               20       79.4 %                   6.94       8.63
 *     skewed blocks        4       78.7 %                   7.16       8.86
 *     skewed blocks        5       79.6 %                   6.46       8.81
 *     skewed blocks        8       81.0 %                   5.66       9.18
 *     skewed blocks       20       79.3 %                   4.58       8.49
 *
 * Where players hardly differ (a standard deviation of 1 pin against 6 within), intervals hold more than they say: too wide, not too narrow.
 */

/** 90 % point of the normal distribution: 80 % intervals reach so many standard errors (any table). */
const NORMAL_80 = 1.2816

const LEAST_BLOCKS = 2
const MOST_BLOCKS = 8
const LEAST_CHOICES = 8
const MOST_CHOICES = 24

/** How players of a simulated group differ, and how their blocks scatter; in pins a game. */
export interface World {
  readonly name: string
  readonly truth: (source: RandomSource) => number
  /** Of a block of 15 choices. */
  readonly noise: (source: RandomSource) => number
}

const exponential = (source: RandomSource): number => -Math.log(source())

export const WORLDS: readonly World[] = [
  { name: 'alike', truth: (s) => 10 + drawNormal(s), noise: (s) => 6 * drawNormal(s) },
  { name: 'middling', truth: (s) => 10 + 3 * drawNormal(s), noise: (s) => 6 * drawNormal(s) },
  { name: 'apart', truth: (s) => 10 + 6 * drawNormal(s), noise: (s) => 6 * drawNormal(s) },
  { name: 'skewed blocks', truth: (s) => 10 + 3 * drawNormal(s), noise: (s) => 6 * (exponential(s) - 1) },
]

export interface Coverage {
  readonly covered80: number
  readonly pooledSquaredError: number
  readonly separateSquaredError: number
}

/** How often 80 % intervals of pooled means hold the truth, and squared errors with and without pooling, over simulated groups. */
export function coverageOver(world: World, groups: number, players: number): Coverage {
  let covered = 0
  let pooledError = 0
  let separateError = 0
  for (let group = 0; group < groups; group++) {
    const source = stream({ seed: world.name, game: players, frame: group, ball: 0, purpose: 'study' })
    const truths = Array.from({ length: players }, () => world.truth(source))
    const blocks = truths.map((truth) => blocksOf(truth, world, source))
    const pooled = pooledMeans(blocks)
    truths.forEach((truth, at) => {
      const { mean, standardError } = pooled[at]!
      covered += Math.abs(mean - truth) <= NORMAL_80 * standardError! ? 1 : 0
      pooledError += (mean - truth) ** 2
      separateError += (plainMean(blocks[at]!) - truth) ** 2
    })
  }
  const count = groups * players
  return {
    covered80: covered / count,
    pooledSquaredError: pooledError / count,
    separateSquaredError: separateError / count,
  }
}

function blocksOf(truth: number, { noise }: World, source: RandomSource): Weighed[] {
  const between = (least: number, most: number): number => least + Math.floor(source() * (most - least + 1))
  return Array.from({ length: between(LEAST_BLOCKS, MOST_BLOCKS) }, () => {
    const weight = between(LEAST_CHOICES, MOST_CHOICES)
    return { value: truth + noise(source) * Math.sqrt(15 / weight), weight }
  })
}

const plainMean = (blocks: readonly Weighed[]): number =>
  blocks.reduce((sum, { value, weight }) => sum + value * weight, 0) /
  blocks.reduce((sum, { weight }) => sum + weight, 0)

/** `npm run study pooled-groups [GROUPS]`. */
export function run(args: readonly string[]): void {
  const groups = Number(args[0] ?? 500)
  process.stdout.write('world          players   80 % holds   squared error pooled   separate\n')
  for (const world of WORLDS) {
    for (const players of [4, 5, 8, 20]) {
      const { covered80, pooledSquaredError, separateSquaredError } = coverageOver(world, groups, players)
      process.stdout.write(
        `${world.name.padEnd(15)}${String(players).padStart(7)}${`${(100 * covered80).toFixed(1)} %`.padStart(13)}${pooledSquaredError.toFixed(2).padStart(23)}${separateSquaredError.toFixed(2).padStart(11)}\n`,
      )
    }
  }
}
