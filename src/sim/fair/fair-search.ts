import type { Belief } from '../belief/belief.js'
import type { BlockSetup } from '../block/types.js'
import type { PricedLine } from '../decision/best-line.js'
import { dynamicsOfBag, pricingOf } from '../decision/bowler-pricing.js'
import { meanOf } from '../decision/direct-worth.js'
import type { Pricing } from '../decision/pricing.js'
import type { BeliefPair } from './belief-pair.js'
import { type LaneImaginer, laneImaginer } from './imagined-lanes.js'
import { informationWorth } from './information-worth.js'
import { lazily } from './lazily.js'
import { type BallSweep, bestOfSweep, type SweptLine, sweepLines, sweptLines } from './line-sweep.js'
import { type Bench, type Judging, judgingOn, worthOnEachLane } from './worth-matrix.js'

/** What of a scenario everyone on the lanes may know: never the oil. */
export type ShownSetup = Pick<BlockSetup, 'bag' | 'bowler' | 'scoring'>

/** How much work a search does; larger ones are for studies of the usual one's error. */
export interface SearchBudget {
  readonly sweepLanes: number
  readonly semifinalLines: number
  readonly semifinalLanes: number
  readonly semifinalDeliveries: number
  readonly finalLines: number
  readonly finalLanes: number
  readonly finalDeliveries: number
  readonly playOffLines: number
  readonly playOffLanes: number
  readonly playOffDeliveries: number
  readonly judgingLanes: number
  readonly judgingDeliveries: number
  readonly informationLanes: number
}

export const USUAL_BUDGET: SearchBudget = {
  sweepLanes: 5,
  semifinalLines: 48,
  semifinalLanes: 48,
  semifinalDeliveries: 8,
  finalLines: 12,
  finalLanes: 96,
  finalDeliveries: 12,
  playOffLines: 6,
  playOffLanes: 144,
  playOffDeliveries: 24,
  judgingLanes: 192,
  judgingDeliveries: 24,
  informationLanes: 16,
}

/** Draws of lanes; each stage has its own. */
export const ROUNDS = {
  sweep: 0,
  semifinal: 1,
  final: 2,
  judging: 3,
  neighbours: 5,
  information: 6,
  probing: 7,
  spare: 8,
  playOff: 9,
  probes: 10,
} as const
/** Where each stage's delivery errors start in the sequence of all. */
const STARTS = { semifinal: 200_000, final: 300_000, playOff: 350_000, judging: 400_000 } as const

/** The first-ball lines that one who knows no more than was shown would choose among. */
export interface FairSearch {
  readonly kind: 'first-ball'
  readonly setup: ShownSetup
  readonly belief: Belief
  readonly bench: Bench
  readonly imagine: LaneImaginer
  /** The same from the belief that no choice is made by. */
  readonly imagineToCount: LaneImaginer
  /** Best first, by a play-off among the leading few. Contains the best line of every ball. */
  readonly finalists: readonly PricedLine[]
  /** Lanes drawn apart and fresh deliveries: what a choice is held against the best on. */
  readonly judging: () => Judging
  readonly sweeps: readonly BallSweep[]
  readonly lines: readonly SweptLine[]
  /** The best line on each of the sweep's lanes alone. */
  readonly bestOnEachLane: readonly PricedLine[]
  /** Pins that seeing the oil would be worth, at the least: what changing between a dozen lines lane by lane gains. */
  readonly informationPins: () => number
}

/** Finalists among the lines that one who sees the oil may change between. */
const INFORMING = 5
/** Lines a ball sends to the semifinal whatever the others do. */
const PER_BALL = 3

/**
 * Races all lines of all balls over lanes drawn from the belief: a sweep over few lanes, a semifinal of the best by
 * direct rolling over fresh ones, a final and a play-off over fresh ones again, so that no line wins
 * for having been lucky.
 *
 * @param pricing how results are valued; without it the score of the game is left out of account
 */
export function searchFair(
  setup: ShownSetup,
  { toChooseBy: belief, toCountBy }: BeliefPair,
  lane: number,
  pricing: Pricing = pricingOf(setup),
  budget: SearchBudget = USUAL_BUDGET,
): FairSearch {
  const profile = setup.bowler
  const bench: Bench = { bag: dynamicsOfBag(setup.bag), profile, pricing }
  const imagine = laneImaginer(belief, lane, profile.hand)
  const counted = lazily(() => laneImaginer(toCountBy(), lane, profile.hand))
  const imagineToCount: LaneImaginer = (count, round) => counted()(count, round)
  const lines = sweptLines(profile)
  const sweep = sweepLines(imagine(budget.sweepLanes, ROUNDS.sweep), bench.bag, profile, pricing, lines)
  const semifinal = judgingOn(
    bench,
    imagine(budget.semifinalLanes, ROUNDS.semifinal),
    budget.semifinalDeliveries,
    STARTS.semifinal,
  )
  const rated = semifinalists(sweep.balls, lines, budget.semifinalLines)
    .map((line) => ({ ...line, worth: meanOf(worthOnEachLane(semifinal, line)) }))
    .sort((a, b) => b.worth - a.worth)
  const final = judgingOn(bench, imagine(budget.finalLanes, ROUNDS.final), budget.finalDeliveries, STARTS.final)
  const placed = finalLines(rated, budget.finalLines)
    .map((line) => ({ ...line, worth: meanOf(worthOnEachLane(final, line)) }))
    .sort((a, b) => b.worth - a.worth)
  const playOff = judgingOn(
    bench,
    imagine(budget.playOffLanes, ROUNDS.playOff),
    budget.playOffDeliveries,
    STARTS.playOff,
  )
  const leaders = placed
    .slice(0, budget.playOffLines)
    .map((line) => ({ ...line, worth: meanOf(worthOnEachLane(playOff, line)) }))
    .sort((a, b) => b.worth - a.worth)
  const finalists = [...leaders, ...placed.slice(budget.playOffLines)]
  return {
    kind: 'first-ball',
    setup,
    belief,
    bench,
    imagine,
    imagineToCount,
    finalists,
    judging: lazily(() => {
      const lanes = imagineToCount(budget.judgingLanes, ROUNDS.judging)
      return judgingOn(bench, lanes, budget.judgingDeliveries, STARTS.judging)
    }),
    sweeps: sweep.balls,
    lines,
    bestOnEachLane: sweep.bestOnEachLane,
    informationPins: lazily(() => {
      const lanes = imagine(budget.informationLanes, ROUNDS.information)
      return informationWorth(bench, lanes, [...finalists.slice(0, INFORMING), ...sweep.bestOnEachLane])
    }),
  }
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
