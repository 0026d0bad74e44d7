import { BLUR, reweigh, TRUST } from '../belief/credit.js'
import { chanceOfSeen } from '../belief/observation-model.js'
import type { SeenCells } from '../belief/seen-cells.js'
import type { PricedLine } from '../shots/best-line.js'
import { type FilmInPlay, meanOf } from '../shots/direct-worth.js'
import { distinctShots, shotKey } from '../shots/shots.js'
import { type JudgedThrow, judgingBy, worthOnEachLane } from '../shots/worth-matrix.js'
import { type FairSearch, ROUNDS } from './fair-search.js'
import { linesOnLanes, placeOfMost } from './information-worth.js'
import { rollProbe, type Sight, sightBy, type ThrowOnLane, UNSEEN_MISSES } from './probe-sights.js'

/** What one throw would teach. */
export interface Lesson {
  /** Expected game pins that what it shows gains on each later throw. */
  readonly pins: number
  /** The same, lane by lane, had the lane been the true one; for pairing. */
  readonly onEachLane: Float64Array
  /** How likely each of those lanes is; sums to 1. */
  readonly shares: Float64Array
}

/** A line with what it is worth now and what it would teach. */
export interface Probe extends PricedLine {
  readonly lesson: Lesson
}

/** What may be learned on a lane before it is known. */
export interface Probing {
  readonly probes: readonly Probe[]
  readonly lessonOf: (thrown: JudgedThrow) => Lesson
}

const LANES = 48
const FINALISTS = 6
/** What a probe is worth on its throw is counted afresh, since finalists were chosen for looking good. */
const WORTH_LANES = 48

/**
 * Values what a throw would show, not only what it scores: of every lane imagined, a handful of throws are rolled; what
 * the eye would see reweighs the lanes as the belief does; the line then best gains over the one that is best now
 * (value of sample information; knowledge gradient of Frazier, Powell & Dayanik 2008). Lines are chosen by one set of
 * figures and counted by another, so that noise teaches nothing.
 */
export function probe(search: FairSearch): Probing {
  const { bench } = search
  const lines = distinctShots([...search.finalists.slice(0, FINALISTS), ...search.bestOnEachLane])
  const drawn = search.imagine(LANES, ROUNDS.probing)
  const figures = linesOnLanes(bench, drawn, lines)
  const lanes = [...new Set(drawn)]
  const places = lanes.map((lane) => drawn.flatMap((one, at) => (one === lane ? [at] : [])))
  const gathered = (worths: Float64Array): Float64Array =>
    Float64Array.from(places, (own) => own.reduce((sum, at) => sum + worths[at], 0) / own.length)
  const room: Classroom = {
    lanes,
    shares: Float64Array.from(places, (own) => own.length / LANES),
    toChooseBy: figures.toChooseBy.map(gathered),
    toCountBy: figures.toCountBy.map(gathered),
    sight: sightBy(search.belief.known.seeing),
  }
  const lessons = new Map<string, Lesson>()
  const lessonOf = (thrown: JudgedThrow): Lesson => {
    const key = shotKey(thrown)
    const known = lessons.get(key)
    if (known) return known
    const found = lesson(
      room,
      lanes.map((lane) => rollProbe(lane, bench, thrown)),
    )
    lessons.set(key, found)
    return found
  }
  const fresh = judgingBy(bench, search.imagine(WORTH_LANES, ROUNDS.probes))
  return {
    probes: lines.map((line) => ({
      ...line,
      worth: meanOf(worthOnEachLane(fresh, line)),
      lesson: lessonOf(line),
    })),
    lessonOf,
  }
}

interface Classroom {
  /** Each lane once. */
  readonly lanes: readonly FilmInPlay[]
  /** How likely each is; sums to 1. */
  readonly shares: Float64Array
  readonly toChooseBy: readonly Float64Array[]
  readonly toCountBy: readonly Float64Array[]
  readonly sight: Sight
}

function lesson(room: Classroom, rolled: readonly ThrowOnLane[]): Lesson {
  const { lanes, shares, sight } = room
  const gainOf = gainFromSeeing(room, rolled)
  const known = new Map<string, number>()
  const onEachLane = Float64Array.from(lanes, (_, truth) => {
    let sum = 0
    rolled[truth].forEach((outcome, at) => {
      const place = Math.floor(at / UNSEEN_MISSES)
      const seen = sight(outcome)
      const key = [place, seen.breakpointBoard.from, seen.breakpointFeet.from, seen.entryBoard?.from].join(' ')
      const gain = known.get(key) ?? gainOf(seen, place)
      known.set(key, gain)
      sum += gain
    })
    return sum / rolled[truth].length
  })
  return { pins: Math.max(0, weighted(onEachLane, shares)), onEachLane, shares }
}

/** What changing to the line then best gains once a throw that crossed the arrows at a `place` was seen so. */
function gainFromSeeing(
  { lanes, shares, toChooseBy, toCountBy }: Classroom,
  rolled: readonly ThrowOnLane[],
): (seen: SeenCells, place: number) => number {
  const now = placeOfMost(toChooseBy.map((worths) => weighted(worths, shares)))
  const weights = new Float64Array(lanes.length)
  const chances = new Float64Array(lanes.length)
  return (seen, place) => {
    for (let lane = 0; lane < lanes.length; lane++) {
      chances[lane] = 0
      for (let miss = 0; miss < UNSEEN_MISSES; miss++)
        chances[lane] += chanceOfSeen(seen, null, rolled[lane][place * UNSEEN_MISSES + miss], BLUR)
    }
    weights.set(shares)
    reweigh(weights, chances, TRUST.lineTold)
    const then = placeOfMost(toChooseBy.map((worths) => weighted(worths, weights)))
    return weighted(toCountBy[then], weights) - weighted(toCountBy[now], weights)
  }
}

function weighted(values: Float64Array, weights: Float64Array): number {
  let sum = 0
  for (let k = 0; k < values.length; k++) sum += values[k] * weights[k]
  return sum
}
