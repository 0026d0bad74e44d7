import { type RandomSource, stream } from '../../random.js'
import type { BlockSetup, BlockState } from '../../world/block/types.js'
import type { OilFilm } from '../../world/lane/film.js'
import { absorb } from './absorb.js'
import { creditOf, meanUnder, reweigh } from './credit.js'
import {
  blankHypotheses,
  copyHypotheses,
  drawCoordinates,
  filmAt,
  type HypothesisSet,
  layHypotheses,
  pickSystematically,
} from './hypotheses.js'
import type { PastThrow } from './move-hypotheses.js'
import { isSameSheet, type PatternRanges, rangesOf } from './pattern-ranges.js'
import { renew } from './renew.js'
import { type KnownBefore, knownBefore, type ShownThrow, shownThrows } from './shown.js'

/** What can be known of the oil of one lane, or of two that are posted alike, from all that was shown. */
export interface Belief {
  /** Lanes of the block that the belief is about. */
  readonly lanes: readonly number[]
  readonly known: KnownBefore
  readonly ranges: PatternRanges
  readonly seed: string
  /** Throws taken in so far. */
  readonly throwsSeen: number
  readonly hypotheses: HypothesisSet
  readonly past: readonly PastThrow[]
}

export const BELIEF_SIZE = 200
/** A new idea may explain a throw a little better than any of the set did. */
const SLACK = 0.7

/** What can be known before the first throw. @param seed of the block: of it, only what is posted and draws of purpose `solver` are used */
export function beginBelief(setup: BlockSetup, lane: number, seed: string, size: number = BELIEF_SIZE): Belief {
  return beliefFrom(knownBefore(setup, seed), lane, seed, size)
}

/** The same from what is known alone, without a setup. */
export function beliefFrom(known: KnownBefore, lane: number, seed: string, size: number = BELIEF_SIZE): Belief {
  const posted = known.posted[lane]
  const lanes = known.posted.flatMap((other, index) => (index === lane || isSameSheet(posted, other) ? [index] : []))
  const ranges = rangesOf(posted)
  const hypotheses = blankHypotheses(size, lanes.length)
  drawCoordinates(hypotheses, solverStream(seed, lanes, 0))
  layHypotheses(hypotheses, ranges, known.hand === 'left')
  return { lanes, known, ranges, seed, throwsSeen: 0, hypotheses, past: [] }
}

/**
 * The belief after one more shown throw on one of its lanes. The old belief stays as it was and can be used again.
 * @throws RangeError when the throw was on another lane
 */
export function updateBelief(belief: Belief, shown: ShownThrow): Belief {
  return takeIn({ ...belief, hypotheses: copyHypotheses(belief.hypotheses) }, shown)
}

/** What can be known of a lane now: everything shown in a block so far, taken in from the start. */
export function beliefAfter(state: BlockState, lane: number, size: number = BELIEF_SIZE): Belief {
  const start = beginBelief(state.setup, lane, state.seed, size)
  return shownThrows(state, start.lanes).reduce(takeIn, start)
}

/** How likely each hypothesis is; sums to 1. */
export function weights(belief: Belief): Float64Array {
  return belief.hypotheses.weights
}

/** The oil on a lane as it lies now under hypothesis `index`, as a view: look, don't write. */
export function filmOf(belief: Belief, index: number, lane: number = belief.lanes[0]): OilFilm {
  return filmAt(belief.hypotheses, placeOf(belief, lane), index)
}

/** Indices of `count` hypotheses in proportion to their weights, the same for the same belief and `index`. */
export function pick(belief: Belief, count: number, index = 0): Uint32Array {
  const uniform = solverStream(belief.seed, belief.lanes, belief.throwsSeen, 1 + index)()
  return pickSystematically(belief.hypotheses.weights, count, uniform)
}

function placeOf(belief: Belief, lane: number): number {
  const place = belief.lanes.indexOf(lane)
  if (place < 0) throw new RangeError(`The belief is about lane ${belief.lanes.join(' and ')}, not lane ${lane}.`)
  return place
}

/** Takes a throw in, writing over the belief's hypotheses. */
function takeIn(belief: Belief, shown: ShownThrow): Belief {
  const { hypotheses, known, seed, lanes } = belief
  const { likelihoods, taken } = absorb(hypotheses, placeOf(belief, shown.lane), shown, known.seeing)
  const meanLikelihood = meanUnder(hypotheses.weights, likelihoods)
  const credits = likelihoods.map((likelihood) => creditOf(likelihood, meanLikelihood, taken.trust))
  const mostCredit = SLACK + credits.reduce((most, credit) => Math.max(most, credit), 0)
  reweigh(hypotheses.weights, likelihoods, taken.trust)
  credits.forEach((credit, i) => {
    hypotheses.credits[i] += credit
  })
  const past = [...belief.past, { ...taken, meanLikelihood, mostCredit }]
  const throwsSeen = belief.throwsSeen + 1
  renew(hypotheses, belief.ranges, known.hand === 'left', past, solverStream(seed, lanes, throwsSeen))
  return { ...belief, throwsSeen, past }
}

/** Draws of the solver's own, kept apart from everything a contest draws. */
function solverStream(seed: string, lanes: readonly number[], throwsSeen: number, index = 0): RandomSource {
  return stream({ seed, game: lanes[0], frame: throwsSeen, ball: 0, purpose: 'solver', index })
}
