import type { BlockState, Decision } from '../../world/block/types.js'
import type { PricedLine } from '../shots/best-line.js'
import { meanOf } from '../shots/direct-worth.js'
import { quadratureWorth } from '../shots/line-quadrature.js'
import { neighboursOf } from '../shots/neighbours.js'
import { searchSpare } from '../shots/spare-search.js'
import { type Bench, type Judging, judgingOn, worthOnEachLane } from '../shots/worth-matrix.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import { facesNewRack } from '../view/player-view.js'
import { decisionOf, knownSearch, laneInPlay, spareSituationOf, spotOf } from './known-choice.js'

/** Balls whose best line trails further by the quick search are not looked at again. */
const WITHIN_PINS = 0.8
/** Lines that are rolled, and of them those that are rolled once more, with misses of their own. */
const ROLLED_LINES = 8
const ROLLED = { misses: 2048, start: 700_000 } as const
const LAST_LINES = 3
const LAST = { misses: 6144, start: 710_000 } as const

/**
 * What one who sees the oil throws: the quick search can be a fifth of a pin off, so the lines around the best of each
 * ball are looked at once more, and the leading few rolled miss by miss.
 * @throws RangeError when the block is over
 */
export function knownPlay(state: BlockState): Decision {
  const { setup } = state
  if (!facesNewRack(state)) return decisionOf(setup, searchSpare(spareSituationOf(state)))
  const lane = state.lanes[spotOf(state).lane]
  const inPlay = laneInPlay(setup, lane)
  const bench: Bench = { bag: dynamicsOfBag(setup.bag), profile: setup.bowler, pricing: pricingOf(setup) }
  const { best, perBall } = knownSearch(setup, lane)
  const leading = perBall
    .filter((line) => line.worth > best.worth - WITHIN_PINS)
    .flatMap((line) => neighboursOf(line.aim).map((aim) => ({ ...line, aim })))
    .map((line) => ({
      ...line,
      worth: quadratureWorth(inPlay, bench.bag[line.ballIndex], bench.profile, line.aim, bench.pricing),
    }))
    .sort(byWorth)
    .slice(0, ROLLED_LINES)
  const last = rolled(leading, judgingOn(bench, [inPlay], ROLLED.misses, ROLLED.start)).slice(0, LAST_LINES)
  return decisionOf(setup, rolled(last, judgingOn(bench, [inPlay], LAST.misses, LAST.start))[0])
}

function rolled(lines: readonly PricedLine[], judging: Judging): PricedLine[] {
  return lines.map((line) => ({ ...line, worth: meanOf(worthOnEachLane(judging, line)) })).sort(byWorth)
}

const byWorth = (a: PricedLine, b: PricedLine): number => b.worth - a.worth
