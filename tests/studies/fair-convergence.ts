import { loadScenario } from '../../src/scenarios/library/load.js'
import { sessionOf } from '../../src/sim/analysis/belief/session.js'
import {
  type FairSearch,
  ROUNDS,
  type SearchBudget,
  searchFair,
  USUAL_BUDGET,
} from '../../src/sim/analysis/grade/fair-search.js'
import { choose } from '../../src/sim/analysis/policies/policies.js'
import { meanOf } from '../../src/sim/analysis/shots/direct-worth.js'
import { ballIndexOf } from '../../src/sim/analysis/shots/shots.js'
import {
  directJudging,
  directWorthOnEachLane,
  type JudgedThrow,
  pairedDifference,
  worthOnEachLane,
} from '../../src/sim/analysis/shots/worth-matrix.js'
import { pricingOf } from '../../src/sim/analysis/value/bowler-pricing.js'
import { facesNewRack, playerView } from '../../src/sim/analysis/view/player-view.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import type { BlockState } from '../../src/sim/world/block/types.js'
import { keepLines, keptLines } from '../sim/analysis/grade/kept-lines.js'

const SCENARIOS = ['unseen-draw', 'house-forty', 'flat-forty-four', 'short-thirty-five'] as const
const MOST_THROWS = 14

/** About twenty times the usual work, and judged by two million balls rolled one by one. */
const LARGE_BUDGET: SearchBudget = {
  sweepLanes: 64,
  rounds: [
    { lines: 192, lanes: 96 },
    { lines: 40, lanes: 300 },
    { lines: 12, lanes: 600 },
  ],
  judgingLanes: 600,
  informationLanes: 32,
}
const DELIVERIES = 64
const BAND_STANDARD_ERRORS = 1.64

interface Outcome {
  readonly regret: number
  /** Error of the usual judging's paired difference between the best and the line last thrown, and its own opinion of it. */
  readonly error: number
  readonly standardError: number
}

/**
 * How much worse the usual search chooses than one of twenty times its work, and whether the standard error it reports
 * covers its error. Arguments: folder, number of the first decision, decisions (0 to only add up).
 *
 *     100 decisions (24 to 123)                      goal
 *     regret, mean           0.016 pin     at most   0.03
 *     regret, most           0.133 pin     at most   0.2
 *     errors within 1.64 SE  96 of 100     at least  90 %
 *
 * Before the leading lines played off, decisions 24 to 54 had mean 0.051 and most 0.254.
 */
export async function run(args: readonly string[] = []): Promise<void> {
  const [folder = ''] = args
  const first = Number(args[1] ?? 0)
  const decisions = Number(args[2] ?? 0)
  const keep = keepLines<Outcome>(args[0], first, decisions)
  for (let number = first; number < first + decisions; number++) keep(outcomeOf(await stateOf(number)))
  report(keptLines<Outcome>(folder))
}

function report(outcomes: readonly Outcome[]): void {
  const regrets = outcomes.map(({ regret }) => regret).sort((a, b) => a - b)
  const mean = regrets.reduce((sum, regret) => sum + regret, 0) / regrets.length
  const compared = outcomes.filter(({ standardError }) => standardError > 0)
  const covered = compared.filter(
    ({ error, standardError }) => Math.abs(error) <= BAND_STANDARD_ERRORS * standardError,
  ).length
  const at = (share: number): string => regrets[Math.floor(share * (regrets.length - 1))].toFixed(3)
  console.log(`${regrets.length} decisions`)
  console.log(`regret in pins: mean ${mean.toFixed(3)}, median ${at(0.5)}, 90 % ${at(0.9)}, most ${at(1)}`)
  console.log(`errors within 1.64 standard errors: ${covered} of ${compared.length}`)
}

/** A first ball to be decided after some throws of a numbered block. */
async function stateOf(number: number): Promise<BlockState> {
  const { setup } = await loadScenario(SCENARIOS[number % SCENARIOS.length])
  let state = beginBlock(setup, `convergence ${number}`)
  for (let thrown = (number * 5) % MOST_THROWS; thrown > 0 || !facesNewRack(state); thrown--)
    state = advance(state, choose('thumb', state))
  return state
}

function outcomeOf(state: BlockState): Outcome {
  const lane = state.spot?.lane ?? 0
  const belief = sessionOf(state).beliefs[lane]
  const search = (budget: SearchBudget): FairSearch =>
    searchFair(state.setup, belief, lane, pricingOf(state.setup), budget)
  const usual = search(USUAL_BUDGET)
  const large = search(LARGE_BUDGET)
  const lanes = large.imagineToCount(LARGE_BUDGET.judgingLanes, ROUNDS.judging)
  const judging = directJudging(large.bench, lanes, DELIVERIES, 2_000_000)
  const exactly = (thrown: JudgedThrow): Float64Array => directWorthOnEachLane(judging, thrown)
  const usualBest = exactly(usual.finalists[0])
  const last = playerView(state)?.suggestion
  if (!last) throw new RangeError('The block is over.')
  const chosen: JudgedThrow = { ballIndex: ballIndexOf(state.setup.bag, last.ballId), aim: last.aim }
  const reportedOf = (thrown: JudgedThrow): Float64Array => worthOnEachLane(usual.judging(), thrown)
  const reported = pairedDifference(reportedOf(usual.finalists[0]), reportedOf(chosen))
  return {
    regret: meanOf(exactly(large.finalists[0])) - meanOf(usualBest),
    error: reported.mean - (meanOf(usualBest) - meanOf(exactly(chosen))),
    standardError: reported.standardError,
  }
}
