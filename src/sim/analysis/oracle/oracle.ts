import type { BlockSetup, BlockState, Decision } from '../../world/block/types.js'
import type { LaneState } from '../../world/lane/wear.js'
import { blockPricing } from '../grade/lane-baseline.js'
import type { PricedLine } from '../shots/best-line.js'
import { meanOf } from '../shots/direct-worth.js'
import { quadratureWorth } from '../shots/line-quadrature.js'
import { neighboursOf } from '../shots/neighbours.js'
import { distinctShots } from '../shots/shots.js'
import { searchSpare } from '../shots/spare-search.js'
import { type Bench, type DirectJudging, directJudging, directWorthOnEachLane } from '../shots/worth-matrix.js'
import { dynamicsOfBag } from '../value/bowler-pricing.js'
import type { Pricing } from '../value/pricing.js'
import { facesNewRack } from '../view/player-view.js'
import { decisionOf, knownSearch, laneInPlay, spareSituationOf, spotOf } from './known-choice.js'

/** Balls whose best line trails further by the quick search are not looked at again. */
const WITHIN_PINS = 0.8
/** Lines that are rolled, and of them those that are rolled once more, with misses of their own. */
const ROLLED_LINES = 8
const ROLLED = { misses: 1024, start: 700_000 } as const
const LAST_LINES = 3
const LAST = { misses: 4096, start: 710_000 } as const

/** The best first balls on one lane for one who sees its oil. */
export interface FullInformation {
  readonly best: PricedLine
  /** The best line of each ball, in the bag's order. */
  readonly perBall: readonly PricedLine[]
  /** Worth of any line by the quick search's surface. */
  readonly worthOf: (ballIndex: number, aim: PricedLine['aim']) => number
}

/**
 * The one answer to what is best if the oil is seen: the quick search can be a fifth of a pin off, so the lines around the
 * best of each ball are looked at once more, and the leading few rolled miss by miss.
 */
export function fullInformationOn(setup: BlockSetup, lane: LaneState, pricing: Pricing): FullInformation {
  const known = kept.find((one) => one.lane === lane && one.setup === setup && one.pricing === pricing)
  if (known) return known.found
  const found = lookClosely(setup, lane, pricing)
  kept = [{ lane, setup, pricing, found }, ...kept].slice(0, KEPT)
  return found
}

/** Those of the lanes asked about last. */
const KEPT = 2
interface Kept {
  readonly lane: LaneState
  readonly setup: BlockSetup
  readonly pricing: Pricing
  readonly found: FullInformation
}
let kept: readonly Kept[] = []

function lookClosely(setup: BlockSetup, lane: LaneState, pricing: Pricing): FullInformation {
  const inPlay = laneInPlay(setup, lane)
  const bench: Bench = { bag: dynamicsOfBag(setup.bag), profile: setup.bowler, pricing }
  const quick = knownSearch(setup, lane, pricing)
  const leading = distinctShots(
    quick.perBall
      .filter((line) => line.worth > quick.best.worth - WITHIN_PINS)
      .flatMap((line) => neighboursOf(line.aim).map((aim) => ({ ...line, aim }))),
  )
    .map((line) => ({
      ...line,
      worth: quadratureWorth(inPlay, bench.bag[line.ballIndex], bench.profile, line.aim, pricing),
    }))
    .sort(byWorth)
    .slice(0, ROLLED_LINES)
  const once = rolled(leading, directJudging(bench, [inPlay], ROLLED.misses, ROLLED.start))
  const last = rolled(once.slice(0, LAST_LINES), directJudging(bench, [inPlay], LAST.misses, LAST.start))
  const closer = [...last, ...once.slice(LAST_LINES)]
  const [best] = last
  return {
    best,
    perBall: quick.perBall.map((line) => {
      const own = closer.find((one) => one.ballIndex === line.ballIndex) ?? line
      // a line that lost the race trails the best, whatever its own figures say
      return { ...own, worth: Math.min(own.worth, best.worth) }
    }),
    worthOf: quick.worthOf,
  }
}

/**
 * What one who sees the oil throws next.
 * @throws RangeError when the block is over
 */
export function fullInformationBest(state: BlockState): Decision {
  const { setup } = state
  const pricing = blockPricing(state)
  if (!facesNewRack(state)) return decisionOf(setup, searchSpare(spareSituationOf(state, pricing)))
  return decisionOf(setup, fullInformationOn(setup, state.lanes[spotOf(state).lane], pricing).best)
}

function rolled(lines: readonly PricedLine[], judging: DirectJudging): PricedLine[] {
  return lines.map((line) => ({ ...line, worth: meanOf(directWorthOnEachLane(judging, line)) })).sort(byWorth)
}

const byWorth = (a: PricedLine, b: PricedLine): number => b.worth - a.worth
