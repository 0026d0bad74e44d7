import { exponential } from '../../exact-math.js'

/**
 * A normal error as a mixture of narrow normal errors around equally spaced nodes. Within each the path is taken as
 * linear and smears the place at the pins; between them it bends as it does. (The worth is a narrow peak, on which
 * few-node rules fail.)
 */
export const ANGLE_NODES = 11
const REACH_SIGMAS = 2.8
export const ANGLE_NODE_STEP = (2 * REACH_SIGMAS) / (ANGLE_NODES - 1)
export const NARROW_SIGMA = 0.45
export const angleNodes: readonly number[] = Array.from(
  { length: ANGLE_NODES },
  (_, k) => k * ANGLE_NODE_STEP - REACH_SIGMAS,
)
export const angleWeights: readonly number[] = normalised(
  angleNodes.map((z) => exponential((-z * z) / (2 * (1 - NARROW_SIGMA * NARROW_SIGMA)))),
)

function normalised(weights: number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0)
  return weights.map((w) => w / sum)
}
