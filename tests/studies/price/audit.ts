import { beliefFrom, updateBelief } from '../../../src/sim/analysis/belief/belief.js'
import { knownBefore, shownThrows } from '../../../src/sim/analysis/belief/shown.js'
import { choicesFor } from '../../../src/sim/analysis/grade/fair-grade.js'
import { ROUNDS, type SearchBudget, searchFair } from '../../../src/sim/analysis/grade/fair-search.js'
import { throwOf } from '../../../src/sim/analysis/grade/first-ball-grade.js'
import { firstBallPrices } from '../../../src/sim/analysis/grade/first-ball-prices.js'
import { laneBaseline } from '../../../src/sim/analysis/grade/lane-baseline.js'
import { momentOf } from '../../../src/sim/analysis/grade/moment.js'
import { meanOf } from '../../../src/sim/analysis/shots/direct-worth.js'
import { directJudging, directWorthOnEachLane, pairedDifference } from '../../../src/sim/analysis/shots/worth-matrix.js'
import { pricingOf } from '../../../src/sim/analysis/value/bowler-pricing.js'
import { facesNewRack } from '../../../src/sim/analysis/view/player-view.js'
import { lazily } from '../../../src/sim/lazily.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { OILS, setupOf, statesBy } from './blocks.js'

/** Ideas of the oil by which brute force chooses, and as many others by which it counts. */
const IDEAS = 600
const BRUTE: SearchBudget = {
  sweepLanes: 24,
  rounds: [
    { lines: 120, lanes: 48 },
    { lines: 48, lanes: 96 },
    { lines: 24, lanes: 192 },
    { lines: 8, lanes: 384 },
  ],
  judgingLanes: 600,
  informationLanes: 4,
}
const DELIVERIES = 64
const HABITS = ['thumb', 'stay', 'random'] as const

/** Charged over true loss, this throw alone: decisions of three habits on both kinds of oil, each held against brute force. */
export function auditCharges(first: number, count: number): void {
  let charged = 0
  let lost = 0
  let falseCalls = 0
  for (let number = first; number < first + count; number++) {
    const { before, decision } = decisionOf(number)
    const moment = momentOf(before, [0])
    const search = choicesFor(before)
    if (search.kind !== 'first-ball') continue
    const last = throwOf(search, moment.stay)
    const { priceOf } = firstBallPrices({ search, last, throwsToCome: 0, probing: null })
    const chosen = throwOf(search, decision)
    const price = priceOf(chosen)
    const brute = bruteForce(before)
    const [best] = brute.finalists
    // plain Monte Carlo over lanes drawn apart, which owes nothing to the fit that the grade is made of
    const lanes = brute.imagineToCount(BRUTE.judgingLanes, ROUNDS.judging)
    const judging = directJudging(brute.bench, lanes, DELIVERIES, 2_000_000)
    const truth = pairedDifference(directWorthOnEachLane(judging, best!), directWorthOnEachLane(judging, chosen))
    const trueLost = Math.max(0, truth.mean)
    const isFalse = price.chargedPins > 0 && trueLost + 2 * truth.standardError < price.tooCloseToCallPins
    charged += price.chargedPins
    lost += trueLost
    if (isFalse) falseCalls++
    console.log(
      `${number} charged ${price.chargedPins.toFixed(2)} lost ${price.lostPins.toFixed(2)} true ${trueLost.toFixed(2)} ± ${truth.standardError.toFixed(2)} tau ${price.tooCloseToCallPins.toFixed(2)}${isFalse ? ' FALSE' : ''}; best ${meanOf(directWorthOnEachLane(judging, best!)).toFixed(2)}`,
    )
  }
  console.log(
    `charged ${charged.toFixed(2)} of ${lost.toFixed(2)}: ${(charged / lost).toFixed(3)}; false calls ${falseCalls}`,
  )
}

/** The number-th decision: another block, habit and throw each time. */
function decisionOf(number: number) {
  const setup = setupOf(OILS[number % OILS.length]!, number)
  const states = statesBy(HABITS[number % HABITS.length]!, setup, `audit ${number}`)
  const firstBalls = states.filter((state) => state.spot?.phase === 'game' && facesNewRack(state))
  const before = firstBalls[(7 * number) % firstBalls.length]!
  return { before, decision: states[before.throws.length + 1]!.throws.at(-1)!.decision }
}

function bruteForce(state: BlockState) {
  const { setup, seed } = state
  const known = knownBefore(setup, seed)
  const believed = (name: string) =>
    shownThrows(state, [0]).reduce(updateBelief, beliefFrom(known, 0, `${seed} audit ${name}`, IDEAS))
  const pair = { toChooseBy: believed('chosen'), toCountBy: lazily(() => believed('counted')) }
  return searchFair(setup, pair, 0, pricingOf(setup, laneBaseline(setup, seed)), BRUTE)
}
