import type { BallDynamics } from '../ball/dynamics.js'
import type { BowlerProfile } from '../bowler/profile.js'
import type { Aim, ReleaseKind } from '../bowler/release.js'
import { ERROR_DIMENSIONS } from '../decision/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../decision/direct-worth.js'
import type { Pricing } from '../decision/pricing.js'
import type { ImaginedLanes } from './imagined-lanes.js'

/** A throw to be judged. */
export interface JudgedThrow {
  readonly ballIndex: number
  readonly aim: Aim
  readonly release?: ReleaseKind
}

/** Everything that judging a throw needs besides the throw. */
export interface Judging {
  readonly lanes: ImaginedLanes
  readonly bag: readonly BallDynamics[]
  readonly profile: BowlerProfile
  readonly pricing: Pricing
  /** Delivery errors, the same for every throw and lane. */
  readonly nodes: Float64Array
}

/** Mean worth of a throw on each imagined lane, by direct rolling of every delivery error. */
export function worthOnEachLane(judging: Judging, judged: JudgedThrow): Float64Array {
  const { lanes, bag, profile, pricing, nodes } = judging
  const worths = new Float64Array(nodes.length / ERROR_DIMENSIONS)
  const worthOf = firstBallWorth(pricing, judged.aim.speedStep)
  return Float64Array.from(lanes, (lane) => {
    deliverAll(lane, bag[judged.ballIndex], profile, judged.aim, judged.release ?? 'strike', nodes, worthOf, worths)
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
