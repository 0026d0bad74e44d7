import { lazily } from '../../lazily.js'
import type { BlockSetup } from '../../world/block/types.js'
import type { Belief } from '../belief/belief.js'
import type { BeliefPair } from '../belief/belief-pair.js'
import { type LaneImaginer, laneImaginer } from '../belief/imagined-lanes.js'
import type { PricedLine } from '../shots/best-line.js'
import { type Bench, type Judging, judgingOn } from '../shots/worth-matrix.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import type { Pricing } from '../value/pricing.js'
import { informationWorth } from './information-worth.js'
import { type BallSweep, bestOfSweep, type SweptLine, sweepLines, sweptLines } from './line-sweep.js'
import { type RaceRound, race } from './race.js'

/** What of a scenario everyone on the lanes may know: never the oil. */
export type ShownSetup = Pick<BlockSetup, 'bag' | 'bowler' | 'scoring'>

/** How much work a search does; larger ones are for studies of the usual one's error. */
export interface SearchBudget {
  readonly sweepLanes: number
  readonly rounds: readonly RaceRound[]
  readonly judgingLanes: number
  readonly judgingDeliveries: number
  readonly informationLanes: number
}

export const USUAL_BUDGET: SearchBudget = {
  sweepLanes: 5,
  rounds: [
    { lines: 48, lanes: 48, deliveries: 4 },
    { lines: 24, lanes: 48, deliveries: 8 },
    { lines: 12, lanes: 72, deliveries: 12 },
    { lines: 6, lanes: 144, deliveries: 24 },
  ],
  judgingLanes: 192,
  judgingDeliveries: 24,
  informationLanes: 16,
}

/** Draws of lanes; each stage has its own, and the race those that are left out here. */
export const ROUNDS = {
  sweep: 0,
  judging: 3,
  neighbours: 5,
  information: 6,
  probing: 7,
  spare: 8,
  probes: 10,
} as const
/** Where the judging's delivery errors start in the sequence of all. */
const JUDGING_START = 400_000

/** The first-ball lines that one who knows no more than was shown would choose among. */
export interface FairSearch {
  readonly kind: 'first-ball'
  readonly setup: ShownSetup
  readonly belief: Belief
  readonly bench: Bench
  readonly imagine: LaneImaginer
  /** The same from the belief that no choice is made by. */
  readonly imagineToCount: LaneImaginer
  /** Best first, by a race. Contains the best line of every ball. */
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
/** Lines a ball sends to the race whatever the others do. */
const PER_BALL = 3

/**
 * Searches all lines of all balls over lanes drawn from the belief: a sweep over few lanes, then a race of the best by
 * direct rolling over fresh ones.
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
  const finalists = race(bench, imagine, entrants(sweep.balls, lines, budget.rounds[0].lines), budget.rounds)
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
      return judgingOn(bench, lanes, budget.judgingDeliveries, JUDGING_START)
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

/** The best lines of the sweep, some of each ball among them. */
function entrants(sweeps: readonly BallSweep[], lines: readonly SweptLine[], count: number): PricedLine[] {
  const each = sweeps.map((sweep) => bestOfSweep(sweep, lines, count))
  const sure = each.flatMap((best) => best.slice(0, PER_BALL))
  const rest = each.flatMap((best) => best.slice(PER_BALL)).sort((a, b) => b.worth - a.worth)
  return [...sure, ...rest.slice(0, Math.max(0, count - sure.length))]
}
