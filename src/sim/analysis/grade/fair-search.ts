import { lazily } from '../../lazily.js'
import type { BlockSetup } from '../../world/block/types.js'
import type { Belief } from '../belief/belief.js'
import type { BeliefPair } from '../belief/belief-pair.js'
import { type LaneImaginer, laneImaginer } from '../belief/imagined-lanes.js'
import type { PricedLine } from '../shots/best-line.js'
import { type Bench, type Judging, judgingBy } from '../shots/worth-matrix.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import type { Pricing } from '../value/pricing.js'
import { type InformationWorth, informationWorth } from './information-worth.js'
import { type BallSweep, bestOfSweep, type SweptLine, sweepLines, sweptLines } from './line-sweep.js'
import { type RaceRound, race } from './race.js'

/** What of a scenario everyone on the lanes may know: never the oil. */
export type ShownSetup = Pick<BlockSetup, 'bag' | 'bowler' | 'scoring'>

/** How much work a search does; larger ones are for studies of the usual one's error. */
export interface SearchBudget {
  readonly sweepLanes: number
  readonly rounds: readonly RaceRound[]
  readonly judgingLanes: number
  readonly informationLanes: number
}

export const USUAL_BUDGET: SearchBudget = {
  sweepLanes: 4,
  rounds: [
    { lines: 48, lanes: 8 },
    { lines: 24, lanes: 12 },
    { lines: 12, lanes: 24 },
    { lines: 6, lanes: 48 },
  ],
  judgingLanes: 96,
  informationLanes: 16,
}

/** Draws of lanes; each stage has its own, and the race those that are left out here. */
export const ROUNDS = {
  sweep: 0,
  judging: 3,
  information: 6,
  probing: 7,
  spare: 8,
  probes: 10,
} as const

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
  /** Lanes drawn apart: what a choice is held against the best on. */
  readonly judging: () => Judging
  readonly sweeps: readonly BallSweep[]
  readonly lines: readonly SweptLine[]
  /** The best line on each of the sweep's lanes alone. */
  readonly bestOnEachLane: readonly PricedLine[]
  /** What seeing the oil would be worth: what changing between a dozen lines lane by lane gains. */
  readonly information: () => InformationWorth
}

/** Finalists among the lines that one who sees the oil may change between. */
const INFORMING = 5
/** Lines a ball sends to the race whatever the others do. */
const PER_BALL = 3

/**
 * Searches all lines of all balls over lanes drawn from the belief: a sweep over few lanes, then a race of the best over
 * fresh ones.
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
    judging: lazily(() => judgingBy(bench, imagineToCount(budget.judgingLanes, ROUNDS.judging))),
    sweeps: sweep.balls,
    lines,
    bestOnEachLane: sweep.bestOnEachLane,
    information: lazily(() => {
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
