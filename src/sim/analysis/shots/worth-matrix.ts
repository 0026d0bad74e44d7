import type { BallDynamics } from '../../world/ball/dynamics.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, meantThrow, type ReleaseKind } from '../../world/bowler/release.js'
import type { Pricing } from '../value/pricing.js'
import { deliveryNodes, ERROR_DIMENSIONS } from './delivery-nodes.js'
import { responseWorth } from './delivery-response.js'
import { deliverAll, type FilmInPlay, firstBallWorth, meanOf } from './direct-worth.js'

/** A throw to be judged. */
export interface JudgedThrow {
  readonly ballIndex: number
  readonly aim: Aim
  readonly release?: ReleaseKind
}

/** What every judgement on one set of lanes has in common. */
export interface Bench {
  readonly bag: readonly BallDynamics[]
  readonly profile: BowlerProfile
  readonly pricing: Pricing
}

/** Lanes that throws are judged on by how each answers to its misses. */
export interface Judging extends Bench {
  readonly lanes: readonly FilmInPlay[]
  /** The set of misses rolled on each lane, the same for every throw; neighbours have others. */
  readonly designs: readonly number[]
}

/** A judging by responses; different `start`s give the lanes different sets of misses. */
export function judgingBy(bench: Bench, lanes: readonly FilmInPlay[], start = 0): Judging {
  return { ...bench, lanes, designs: lanes.map((_, place) => start + place) }
}

/** The same judging on some of its lanes, by their places. */
export function onLanes(judging: Judging, places: readonly number[]): Judging {
  const { lanes, designs } = judging
  return { ...judging, lanes: places.map((at) => lanes[at]), designs: places.map((at) => designs[at]) }
}

/** Expected worth of a throw on each imagined lane, by its response there. */
export function worthOnEachLane(judging: Judging, judged: JudgedThrow): Float64Array {
  const { lanes, designs, bag, profile, pricing } = judging
  const { ballIndex, aim, release = 'strike' } = judged
  const meant = meantThrow(profile, aim, release)
  return Float64Array.from(lanes, (lane, at) => responseWorth(lane, bag[ballIndex], meant, pricing, designs[at]))
}

/** Everything that rolling a throw miss by miss needs besides the throw. */
export interface DirectJudging extends Bench {
  readonly lanes: readonly FilmInPlay[]
  /**
   * Delivery errors, the same for every throw. Each lane has its own: were they the same on all lanes, their common
   * error would not show in the spread between lanes.
   */
  readonly nodes: Float64Array
}

/** A judging miss by miss, with `deliveries` errors on each lane; different `start`s give different errors. */
export function directJudging(
  bench: Bench,
  lanes: readonly FilmInPlay[],
  deliveries: number,
  start: number,
): DirectJudging {
  return { ...bench, lanes, nodes: keptNodes(lanes.length * deliveries, start) }
}

const nodesByPlace = new Map<string, Float64Array>()

function keptNodes(count: number, start: number): Float64Array {
  const key = `${count} ${start}`
  const known = nodesByPlace.get(key)
  if (known) return known
  const nodes = deliveryNodes(count, start)
  nodesByPlace.set(key, nodes)
  return nodes
}

/** Mean worth of a throw on each lane, by direct rolling of the lane's delivery errors: slow, and owing nothing to a fit. */
export function directWorthOnEachLane(judging: DirectJudging, judged: JudgedThrow): Float64Array {
  const { lanes, bag, profile, pricing, nodes } = judging
  const numbers = nodes.length / lanes.length
  const worths = new Float64Array(numbers / ERROR_DIMENSIONS)
  const worthOf = firstBallWorth(pricing)
  const { ballIndex, aim, release = 'strike' } = judged
  const meant = meantThrow(profile, aim, release)
  return Float64Array.from(lanes, (lane, at) => {
    const own = nodes.subarray(at * numbers, (at + 1) * numbers)
    deliverAll(lane, bag[ballIndex], meant, own, worthOf, worths)
    return meanOf(worths)
  })
}

/** Mean and standard error of the paired difference of two throws over the same lanes. */
export function pairedDifference(a: Float64Array, b: Float64Array): { mean: number; standardError: number } {
  const count = a.length
  let mean = 0
  for (let k = 0; k < count; k++) mean += (a[k] - b[k]) / count
  let square = 0
  for (let k = 0; k < count; k++) square += (a[k] - b[k] - mean) * (a[k] - b[k] - mean)
  return { mean, standardError: count > 1 ? Math.sqrt(square / (count - 1) / count) : 0 }
}
