import { join } from 'node:path'
import { throwWorths } from '../../src/sim/analysis/debrief/ledger/throw-worths.js'
import { bestFairChoice, choicesFor } from '../../src/sim/analysis/grade/fair-grade.js'
import { choose, POLICIES, type Policy } from '../../src/sim/analysis/policies/policies.js'
import { meanOf } from '../../src/sim/analysis/shots/direct-worth.js'
import { ballIndexOf } from '../../src/sim/analysis/shots/shots.js'
import { worthOnEachLane } from '../../src/sim/analysis/shots/worth-matrix.js'
import { facesNewRack } from '../../src/sim/analysis/view/player-view.js'
import { feetToMetres } from '../../src/sim/units.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import type { BlockSetup, BlockState, Decision, FieldBowler, LaneOil } from '../../src/sim/world/block/types.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../src/sim/world/lane/generator.js'
import { tally } from '../../src/sim/world/scoring/game.js'
import { keepLines, keptLines } from '../sim/analysis/grade/kept-lines.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/world/lane/patterns-for-tests.js'

/**
 * Six kinds of oil that share out what is met in play, drawn anew for each block: short, medium and long, each flat and
 * house-like. One who knows nothing before the first throw is right to expect just that mixture.
 */
const DRAWN: readonly LaneOil[] = [
  [32, 37],
  [37.5, 42],
  [42.5, 48],
].flatMap(([shortest, longest]) =>
  [
    [1.5, 2.67],
    [2.67, 12],
  ].map(([flattest, steepest]): LaneOil => {
    const lengthMetres = [feetToMetres(shortest), feetToMetres(longest)] as const
    return { kind: 'limits', limits: { ...WIDEST_LIMITS, lengthMetres, ratio: [flattest, steepest] } }
  }),
)
/** Blocks numbered from here on are bowled on oil written by hand, which nobody who imagines oil has a reason to expect. */
const FIRST_WRITTEN_BLOCK = 10_000
const WRITTEN: readonly LaneOil[] = [houseForty, flatFortyFive, shortThirtyFive, flatForty].map((pattern) => ({
  kind: 'pattern',
  pattern,
}))

const oilOf = (block: number): LaneOil =>
  block < FIRST_WRITTEN_BLOCK ? DRAWN[block % DRAWN.length] : WRITTEN[block % WRITTEN.length]

/** Two others use up the zone, so that a lane is worth following. */
const FIELD: readonly FieldBowler[] = (['tweener', 'cranker'] as const).map((style) => ({
  profile: levelProfile('200', style),
  ball: bag[0],
  aim: { feetBoard: 24, targetBoard: 12, speedStep: 0 },
}))

/** Whose first balls are graded where that is asked for; what random throws lose is seen without. */
const GRADED: readonly Policy[] = ['known', 'fair', 'thumb', 'stay']

/** One game of one policy; sums over its first balls at full racks, in game pins. */
interface Played {
  readonly block: number
  readonly policy: Policy
  /** Expected on the true oil, misses and pins averaged out. */
  readonly expected: number
  /**
   * Lost on the throw itself against the best by what was shown, below 0 where the choice proves better, and how much more
   * it lost on the true oil: Q(best fair) - Q(choice) on the oil as it is less the same by the belief. Null where not graded.
   */
  readonly lost: number | null
  readonly swing: number | null
  readonly delivery: number
  readonly carry: number
  readonly score: number
}

/**
 * Bowls numbered blocks with every policy and adds them to what earlier runs left in a folder.
 * Arguments: folder, number of the first block, blocks (0 to only add up), policies (all, or some with commas between), "graded"
 * to grade the first balls of all but random (slow). Each choice of policies has a folder of its own in the folder.
 *
 *     200 blocks   expected          score     delivery        carry           swing              (standard errors)
 *     known          6.53 (0.44)     179.37    -1.18 (1.22)    0.99 (0.95)    -2.86 (1.12), 16 blocks
 *     fair           3.57 (0.36)     178.68    -0.29 (1.15)   -0.48 (0.90)     0 by construction
 *     thumb         -4.46 (0.35)     167.47    -0.06 (1.06)    1.97 (0.94)    -0.20 (0.22)
 *     stay         -14.50 (0.96)     160.78     0.82 (0.92)   -1.46 (0.87)    -0.04 (0.29)
 *     random       -67.17 (1.12)     104.13     0.17 (0.87)   -0.70 (0.53)
 *
 * known over fair 2.95 (0.20), fair over thumb 8.03 (0.33), thumb over stay 10.04 (0.85), stay over random 52.67 (1.14):
 * every step is more than 11 standard errors. The carry of the rule of thumb is 1.06 (0.54) over 600 blocks.
 *
 * While imagined oil lay an eighth heavier in the heads and lighter behind than what was drawn, and others' throws counted
 * as much as one's own, the swing of the rule of thumb was -0.94 (0.38); before choices were held against lanes drawn apart,
 * and before the points between rolled throws were judged, it was -3.4 (0.7).
 */
export function run(args: readonly string[] = []): void {
  const [folder = '', , , names = 'all', graded] = args
  const first = Number(args[1] ?? 0)
  const blocks = Number(args[2] ?? 0)
  const policies = POLICIES.filter((policy) => names === 'all' || names.split(',').includes(policy))
  const keep = keepLines<Played>(args[0] && join(folder, names), first, blocks)
  for (let block = first; block < first + blocks; block++)
    for (const policy of policies) keep(play(block, policy, graded === 'graded' && GRADED.includes(policy)))
  report(keptLines<Played>(folder))
}

function setupOf(block: number): BlockSetup {
  return {
    name: `ladder ${block}`,
    lanes: [{ name: 'lane 3', oil: oilOf(block) }],
    bag,
    bowler: levelProfile('200'),
    field: FIELD,
    practiceThrows: 2,
    games: 1,
    scoring: 'ten-pin',
    posted: 'nothing',
    seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
  }
}

function play(block: number, policy: Policy, isGraded: boolean): Played {
  let state = beginBlock(setupOf(block), `ladder ${block}`)
  const sums = { expected: 0, lost: 0, swing: 0, delivery: 0, carry: 0 }
  while (state.spot) {
    const before = state
    const decision = choose(policy, before)
    state = advance(before, decision)
    if (before.spot?.phase !== 'game' || !facesNewRack(before)) continue
    const lead = isGraded ? leadOver(before, decision) : null
    const record = state.throws[state.throws.length - 1]
    const worths = throwWorths(before, record, lead?.best ?? decision, decision)
    sums.expected += worths.choice
    sums.delivery += worths.choice - worths.delivered
    sums.carry += worths.delivered - worths.result
    if (lead === null) continue
    sums.lost += lead.pins
    sums.swing += worths.bestFair - worths.choice - lead.pins
  }
  const score = tally('ten-pin', state.balls[0]).total
  return { block, policy, ...sums, ...(isGraded ? {} : { lost: null, swing: null }), score }
}

/** The best first ball by what was shown, and what it gains on a choice by the belief that chooses nothing. */
function leadOver(before: BlockState, decision: Decision): { best: Decision; pins: number } {
  const search = choicesFor(before)
  if (search.kind !== 'first-ball') throw new RangeError('A first ball was to be graded.')
  const best = bestFairChoice(before, search)
  const worth = ({ ballId, aim, release }: Decision): number =>
    meanOf(worthOnEachLane(search.judging(), { ballIndex: ballIndexOf(before.setup.bag, ballId), aim, release }))
  return { best, pins: worth(best) - worth(decision) }
}

function report(all: readonly Played[]): void {
  const of = (policy: Policy): Played[] => all.filter((one) => one.policy === policy).sort((a, b) => a.block - b.block)
  console.log(`${of('known').length} blocks of one game; pins a game, mean (standard error over blocks)`)
  console.log('policy    expected        score          lost           swing          delivery       carry')
  for (const policy of POLICIES) {
    const played = of(policy)
    const cells = (['expected', 'score', 'lost', 'swing', 'delivery', 'carry'] as const).map((figure) =>
      words(played.flatMap((one) => one[figure] ?? [])),
    )
    console.log(policy.padEnd(8) + cells.map((cell) => cell.padStart(15)).join(''))
  }
  POLICIES.slice(1).forEach((lower, at) => {
    const higher = POLICIES[at]
    const lows = new Map(of(lower).map((one) => [one.block, one.expected]))
    const gaps = of(higher).flatMap((one) => {
      const low = lows.get(one.block)
      return low === undefined ? [] : [one.expected - low]
    })
    const { mean, error } = spread(gaps)
    console.log(`${higher} over ${lower}: ${words(gaps)}, ${(mean / error).toFixed(1)} standard errors`)
  })
}

function spread(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)
  return { mean, error: Math.sqrt(variance / values.length) }
}

function words(values: readonly number[]): string {
  if (values.length < 2) return '-'
  const { mean, error } = spread(values)
  return `${mean.toFixed(2)} (${error.toFixed(2)})`
}
