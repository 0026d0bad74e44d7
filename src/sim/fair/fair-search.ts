import type { Belief } from '../belief/belief.js'
import type { BlockSetup } from '../block/types.js'
import type { PricedLine } from '../decision/best-line.js'
import { dynamicsOfBag, pricingOf } from '../decision/bowler-pricing.js'
import { deliveryNodes } from '../decision/delivery-nodes.js'
import { meanOf } from '../decision/direct-worth.js'
import { imagineLanes } from './imagined-lanes.js'
import { type BallSweep, bestOfSweep, type SweptLine, sweepLines, sweptLines } from './line-sweep.js'
import { type Judging, worthOnEachLane } from './worth-matrix.js'

/** How much work a search does; the larger one is for studies of the smaller one's error. */
export interface SearchBudget {
  readonly sweepLanes: number
  readonly semifinalLines: number
  readonly semifinalLanes: number
  readonly semifinalDeliveries: number
  readonly finalLines: number
  readonly finalLanes: number
  readonly finalDeliveries: number
}

export const USUAL_BUDGET: SearchBudget = {
  sweepLanes: 8,
  semifinalLines: 48,
  semifinalLanes: 24,
  semifinalDeliveries: 32,
  finalLines: 8,
  finalLanes: 64,
  finalDeliveries: 64,
}

/** A line that reached the last round, with its worth on each lane of it. */
export interface Finalist extends PricedLine {
  readonly onEachLane: Float64Array
}

/** The first-ball lines that one who knows no more than was shown would choose among. */
export interface FairSearch {
  /** Best first. Contains the best line of every ball that stayed in the race. */
  readonly finalists: readonly Finalist[]
  readonly judging: Judging
  readonly sweeps: readonly BallSweep[]
  readonly lines: readonly SweptLine[]
  /** Pins that seeing the oil would be worth at the least: the mean of each lane's own best among the finalists, less the best. */
  readonly informationPins: number
}

/** Lines a ball sends to the semifinal whatever the others do. */
const PER_BALL = 3

/**
 * Races all lines of all balls over lanes drawn from the belief: a sweep over few lanes, a semifinal of the best by
 * direct rolling over fresh ones, and a final over fresh ones again, so that no line wins for having been lucky.
 */
export function searchFair(
  setup: BlockSetup,
  belief: Belief,
  lane: number,
  budget: SearchBudget = USUAL_BUDGET,
): FairSearch {
  const bag = dynamicsOfBag(setup.bag)
  const pricing = pricingOf(setup)
  const profile = setup.bowler
  const lines = sweptLines(profile)
  const sweeps = sweepLines(imagineLanes(setup, belief, lane, budget.sweepLanes, 0), bag, profile, pricing, lines)
  const semifinal: Judging = {
    lanes: imagineLanes(setup, belief, lane, budget.semifinalLanes, 1),
    bag,
    profile,
    pricing,
    nodes: deliveryNodes(budget.semifinalDeliveries, 1_000),
  }
  const rated = semifinalists(sweeps, lines, budget.semifinalLines)
    .map((line) => ({ ...line, worth: meanOf(worthOnEachLane(semifinal, line)) }))
    .sort((a, b) => b.worth - a.worth)
  const judging: Judging = {
    ...semifinal,
    lanes: imagineLanes(setup, belief, lane, budget.finalLanes, 2),
    nodes: deliveryNodes(budget.finalDeliveries, 2_000),
  }
  const finalists = finalLines(rated, budget.finalLines)
    .map((line) => {
      const onEachLane = worthOnEachLane(judging, line)
      return { ...line, onEachLane, worth: meanOf(onEachLane) }
    })
    .sort((a, b) => b.worth - a.worth)
  return { finalists, judging, sweeps, lines, informationPins: informationWorth(finalists) }
}

function semifinalists(sweeps: readonly BallSweep[], lines: readonly SweptLine[], count: number): PricedLine[] {
  const each = sweeps.map((sweep) => bestOfSweep(sweep, lines, count))
  const sure = each.flatMap((best) => best.slice(0, PER_BALL))
  const rest = each.flatMap((best) => best.slice(PER_BALL)).sort((a, b) => b.worth - a.worth)
  return [...sure, ...rest.slice(0, Math.max(0, count - sure.length))]
}

/** The best lines, and the best of each ball besides. */
function finalLines(rated: readonly PricedLine[], count: number): PricedLine[] {
  const top = rated.slice(0, count)
  const others = rated.filter(
    (line, at) => at >= count && rated.findIndex((one) => one.ballIndex === line.ballIndex) === at,
  )
  return [...top, ...others]
}

function informationWorth(finalists: readonly Finalist[]): number {
  const lanes = finalists[0].onEachLane.length
  let known = 0
  for (let lane = 0; lane < lanes; lane++)
    known += finalists.reduce((most, { onEachLane }) => Math.max(most, onEachLane[lane]), -Infinity) / lanes
  return Math.max(0, known - finalists[0].worth)
}
