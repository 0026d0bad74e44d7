import type { BallDynamics } from '../../world/ball/dynamics.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, meantThrow, type ReleaseKind } from '../../world/bowler/release.js'
import type { ImaginedLanes } from '../belief/imagined-lanes.js'
import type { Pricing } from '../value/pricing.js'
import { deliveryNodes, ERROR_DIMENSIONS } from './delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from './direct-worth.js'

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

/** Everything that judging a throw needs besides the throw. */
export interface Judging extends Bench {
  readonly lanes: ImaginedLanes
  /**
   * Delivery errors, the same for every throw. Each lane has its own: were they the same on all lanes, their common
   * error would not show in the spread between lanes.
   */
  readonly nodes: Float64Array
}

/** A judging on some lanes with `deliveries` errors on each; different `start`s give different errors. */
export function judgingOn(bench: Bench, lanes: ImaginedLanes, deliveries: number, start: number): Judging {
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

/** Mean worth of a throw on each imagined lane, by direct rolling of the lane's delivery errors. */
export function worthOnEachLane(judging: Judging, judged: JudgedThrow): Float64Array {
  const { lanes, bag, profile, pricing, nodes } = judging
  const numbers = nodes.length / lanes.length
  const worths = new Float64Array(numbers / ERROR_DIMENSIONS)
  const worthOf = firstBallWorth(pricing, judged.aim.speedStep)
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
