import { lazily } from '../../lazily.js'
import { meanOf } from '../shots/direct-worth.js'
import { shotKey } from '../shots/shots.js'
import { besideOnTheApproach } from '../shots/twins.js'
import { type JudgedThrow, type Judging, onLanes, pairedDifference, worthOnEachLane } from '../shots/worth-matrix.js'
import { chargeOf, isAsGood, type Loss, lossOf, tooCloseToCall } from '../value/as-good.js'
import type { FairSearch } from './fair-search.js'
import { aheadOf, lessonBetween } from './lookahead.js'
import { nearestAsGood } from './nearest-as-good.js'
import type { Probing } from './probing.js'

/** What a choice costs: its loss, and what of it is charged. */
export interface Price extends Loss {
  /** The one figure that every place prints for this choice. */
  readonly chargedPins: number
  /** Of the loss, what is a poorer lesson about the oil; below 0 where the choice teaches more. */
  readonly lessonPins: number
}

/** What first balls cost at one moment, from what had been seen. Each is worked out once. */
export interface FirstBallPrices {
  /** What all others are held against. */
  readonly leader: JudgedThrow
  readonly priceOf: (thrown: JudgedThrow) => Price
  /** Expected worth of this throw alone, in game pins against the bowler's average first ball. */
  readonly worthOf: (thrown: JudgedThrow) => number
  /** What is shown as the best: of all that cannot be told from it, the nearest to the line thrown last. */
  readonly shownBest: () => JudgedThrow
}

export interface PricedMoment {
  readonly search: FairSearch
  /** The line thrown last, or the one to start from. */
  readonly last: JudgedThrow
  readonly throwsToCome: number
  /** Given where what a throw would teach counts, else null. */
  readonly probing: Probing | null
}

/** A quick look is taken on every so many of the judging lanes. */
const QUICK_STRIDE = 4
/** A loss so many times its standard error is not looked at more closely: what is left of the doubt is a small part of it. */
const CLEARLY = 16
/** Quick figures further off than this many of their own standard errors get no closer look. */
const SURELY = 2.5
/** The same where there are many others to look at. */
const LIKELY = 1

/** Opens the prices of a moment. */
export function firstBallPrices({ search, last, throwsToCome, probing }: PricedMoment): FirstBallPrices {
  const judged = lazily(() => inTwoParts(search.judging()))
  const quickWorths = byShot((thrown) => worthOnEachLane(judged().few, thrown))
  const worths = byShot((thrown) => together(quickWorths(thrown), worthOnEachLane(judged().others, thrown)))
  const myopic = search.finalists[0]
  const leader = probing ? leaderAhead(probing, myopic, throwsToCome) : myopic
  const lessonLost = (thrown: JudgedThrow): { pins: number; standardErrorPins: number } =>
    probing
      ? lessonBetween({
          probing,
          best: leader,
          chosen: thrown,
          throwsToCome,
          lostByBestNowPins: meanOf(worths(myopic)) - meanOf(worths(leader)),
        })
      : { pins: 0, standardErrorPins: 0 }
  const lost = byShot((thrown): Loss => {
    const quick = pairedDifference(quickWorths(leader), quickWorths(thrown))
    const isClear = quick.mean > CLEARLY * quick.standardError
    const now = isClear ? quick : pairedDifference(worths(leader), worths(thrown))
    const later = lessonLost(thrown)
    return lossOf(
      now.mean + later.pins,
      Math.sqrt(now.standardError * now.standardError + later.standardErrorPins * later.standardErrorPins),
    )
  })
  const isGood = (thrown: JudgedThrow, errors: number): boolean => {
    const { mean, standardError } = pairedDifference(quickWorths(leader), quickWorths(thrown))
    const least = mean + lessonLost(thrown).pins - errors * standardError
    return least <= tooCloseToCall(standardError / Math.sqrt(QUICK_STRIDE)) && isAsGood(lost(thrown))
  }
  const priceOf = byShot((thrown): Price => {
    const loss = lost(thrown)
    const isFree = isAsGood(loss) || besideOnTheApproach(thrown).some((beside) => isGood(beside, SURELY))
    return { ...loss, chargedPins: isFree ? 0 : chargeOf(loss), lessonPins: lessonLost(thrown).pins }
  })
  let shown: JudgedThrow | null = null
  return {
    leader,
    priceOf,
    worthOf: (thrown) => meanOf(worths(thrown)),
    shownBest: () => (shown ??= nearestAsGood({ search, from: last, leader, isGood: (one) => isGood(one, LIKELY) })),
  }
}

/** Few lanes for a quick look, and the others. */
function inTwoParts(judging: Judging): { readonly few: Judging; readonly others: Judging } {
  const places = Array.from(judging.lanes.keys())
  const isOfFew = (place: number): boolean => place % QUICK_STRIDE === 0
  return {
    few: onLanes(judging, places.filter(isOfFew)),
    others: onLanes(
      judging,
      places.filter((place) => !isOfFew(place)),
    ),
  }
}

/** Figures of both parts; their order is the same for every throw, so that they pair. */
function together(few: Float64Array, others: Float64Array): Float64Array {
  const all = new Float64Array(few.length + others.length)
  all.set(few)
  all.set(others, few.length)
  return all
}

/** The probe that is worth most with its lesson, where that is clearly more than the best of this throw alone. */
function leaderAhead(probing: Probing, myopic: JudgedThrow, throwsToCome: number): JudgedThrow {
  const ahead = aheadOf(probing, throwsToCome)
  const first = probing.probes.find((one) => shotKey(one) === shotKey(myopic))
  if (!first) return ahead
  const gain = ahead.worth - first.worth + throwsToCome * (ahead.lesson.pins - first.lesson.pins)
  return gain > tooCloseToCall(0) ? ahead : myopic
}

function byShot<T>(compute: (thrown: JudgedThrow) => T): (thrown: JudgedThrow) => T {
  const kept = new Map<string, T>()
  return (thrown) => {
    const key = shotKey(thrown)
    const known = kept.get(key)
    if (known !== undefined) return known
    const made = compute(thrown)
    kept.set(key, made)
    return made
  }
}
