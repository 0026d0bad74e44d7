import { naturalLogarithm } from '../../exact-math.js'
import { drawNormal, type RandomSource } from '../../random.js'
import { judgeOn, type TakenThrow } from './absorb.js'
import { creditOf } from './credit.js'
import {
  blankHypotheses,
  COORDINATES,
  copyHypothesis,
  filmAt,
  type HypothesisSet,
  layHypothesis,
  mirrorInPlace,
} from './hypotheses.js'
import type { PatternRanges } from './pattern-ranges.js'

/** A throw that has been taken in, with what other oil is held against. */
export interface PastThrow extends TakenThrow {
  /** Of the set, when the throw was taken in. */
  readonly meanLikelihood: number
  /** More credit than this throw gives to any oil, as far as the set can tell. */
  readonly mostCredit: number
}

/**
 * Work done for each hypothesis, counted in rolled past throws: laying a pattern costs as much as LAYING of them. It is
 * spent on as many moves as it pays for, so that a long block does not grow slower throw by throw.
 */
const WORK = 20
const LAYING = 4
const MOST_SWEEPS = 2

/**
 * Moves hypotheses about, each step accepted or refused by all that was seen so far, so that they stay draws from what
 * is known (Metropolis; resample-move: Gilks & Berzuini 2001, from memory). Credits are brought up to date; weights stay.
 */
export function moveHypotheses(
  set: HypothesisSet,
  ranges: PatternRanges,
  mirrored: boolean,
  past: readonly PastThrow[],
  random: RandomSource,
): void {
  const moves = Math.floor(set.size * Math.min(MOST_SWEEPS, WORK / (LAYING + past.length)))
  const trial = blankHypotheses(1, set.laneCount)
  const mostCreditFrom = creditStillToCome(past)
  const first = Math.floor(random() * set.size)
  for (let k = 0; k < moves; k++) {
    const i = (first + k) % set.size
    const own = set.coordinates.subarray(i * COORDINATES, (i + 1) * COORDINATES)
    const logPriorRatio =
      random() < 0.5 ? redraw(own, trial.coordinates, random) : stepAlong(set, i, trial.coordinates, random)
    const least = set.credits[i] + naturalLogarithm(1 - random()) - logPriorRatio
    layHypothesis(trial, 0, ranges, mirrored)
    const credit = creditOfAll(trial, past, mostCreditFrom, least)
    if (credit < least) continue
    trial.credits[0] = credit
    copyHypothesis(trial, 0, set, i)
  }
}

/** Shares of a redrawn coordinate that are new; 1 forgets the old value. */
const FRESH_SHARES = [0.35, 0.7, 1] as const
const MOST_REDRAWN = 9

/**
 * Draws a few coordinates partly afresh, in a way that leaves the prior as it is (the autoregressive proposal of Neal
 * 1999 and Cotter, Roberts, Stuart & White 2013, from memory). @returns logarithm of the prior ratio that is left: 0
 */
function redraw(own: Float64Array, into: Float64Array, random: RandomSource): number {
  into.set(own)
  const count = 1 + Math.floor(random() * MOST_REDRAWN)
  const fresh = FRESH_SHARES[Math.floor(random() * FRESH_SHARES.length)]
  const kept = Math.sqrt(1 - fresh * fresh)
  for (let k = 0; k < count; k++) {
    const c = Math.floor(random() * COORDINATES)
    into[c] = kept * into[c] + fresh * drawNormal(random)
  }
  return 0
}

/** 2.38 / √(2 · 18), the step that suits a normal shape in 18 dimensions. */
const STEP = 0.4

/**
 * Steps along the difference of two others, so that steps have the set's own shape (differential evolution: ter Braak
 * 2006, from memory). @returns logarithm of the prior ratio
 */
function stepAlong(set: HypothesisSet, i: number, into: Float64Array, random: RandomSource): number {
  const { coordinates, size } = set
  const a = Math.floor(random() * size) * COORDINATES
  const b = Math.floor(random() * size) * COORDINATES
  let logRatio = 0
  for (let c = 0; c < COORDINATES; c++) {
    const old = coordinates[i * COORDINATES + c]
    into[c] = old + STEP * (coordinates[a + c] - coordinates[b + c])
    logRatio += 0.5 * (old * old - into[c] * into[c])
  }
  return logRatio
}

/** The most that throws from each on can still give. */
function creditStillToCome(past: readonly PastThrow[]): Float64Array {
  const most = new Float64Array(past.length + 1)
  for (let k = past.length - 1; k >= 0; k--) most[k] = most[k + 1] + past[k].mostCredit
  return most
}

/**
 * Lets all past throws roll over the trial's fresh oil, judging and wearing it. Given up, as minus infinity, once
 * `least` is out of reach.
 */
function creditOfAll(
  trial: HypothesisSet,
  past: readonly PastThrow[],
  mostCreditFrom: Float64Array,
  least: number,
): number {
  const films = Array.from({ length: trial.laneCount }, (_, lane) => filmAt(trial, lane, 0))
  let facesLeft = false
  let credit = 0
  for (let k = 0; k < past.length; k++) {
    const taken = past[k]
    if (taken.isLeftHanded !== facesLeft) {
      for (const film of films) mirrorInPlace(film.microns)
      facesLeft = taken.isLeftHanded
    }
    const likelihood = judgeOn(films[taken.lane], taken, trial.wearFactors[0])
    credit += creditOf(likelihood, taken.meanLikelihood, taken.trust)
    if (credit + mostCreditFrom[k + 1] < least) return Number.NEGATIVE_INFINITY
  }
  if (facesLeft) for (const film of films) mirrorInPlace(film.microns)
  return credit
}
