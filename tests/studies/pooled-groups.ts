import type { Weighed } from '../../src/scenarios/reports/review/estimate.js'
import { pooledMeans } from '../../src/scenarios/reports/review/pooled.js'
import { drawNormal, type RandomSource, stream } from '../../src/sim/random.js'

/**
 * Whether partial pooling of players' block figures (reports/review/pooled.ts) covers what it says and is worth having: simulated groups
 * with known truth, 2 to 8 blocks a player, 8 to 24 choices a block. `npm run study pooled-groups`, 500 groups of each size:
 *
 *      world          players   80 % holds   squared error pooled   separate
 *      alike                4       82.3 %                   4.45       8.63
 *      alike                5       85.8 %                   3.30       8.18
 *      alike                8       85.5 %                   2.40       8.28
 *      alike               20       83.1 %                   1.49       8.43
 *      middling             4       80.2 %                   5.84       8.38
 *      middling             5       78.2 %                   5.76       8.66
 *      middling             8       77.5 %                   5.09       8.31
 *      middling            20       76.9 %                   4.74       8.48
 *      apart                4       77.9 %                   7.59       8.46
 *      apart                5       77.6 %                   7.40       8.26
 *      apart                8       78.0 %                   7.51       8.93
 *      apart               20       78.9 %                   6.96       8.63
 *      skewed blocks        4       77.3 %                   6.16       8.86
 *      skewed blocks        5       76.7 %                   5.91       8.81
 *      skewed blocks        8       77.1 %                   5.42       9.18
 *      skewed blocks       20       76.8 %                   4.58       8.49
 *
 * Over the sizes of a world, each player counted once: alike 83.9 %, middling 77.6, apart 78.4, skewed 76.9. Where players hardly differ (a
 * standard deviation of 1 pin against 6 within) intervals of five and of eight players still hold a little more than they say: how little they
 * differ cannot be known from so few.
 */

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
      const { mean, quantile } = pooled[at]!
      covered += quantile(0.1)! <= truth && truth <= quantile(0.9)! ? 1 : 0
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
