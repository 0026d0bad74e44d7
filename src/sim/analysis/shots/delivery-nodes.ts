import { normalQuantile } from '../../exact-math.js'

/** Numbers a delivery's error is made of: lateral, angle, speed, spin, rotation. */
export const ERROR_DIMENSIONS = 5

/** Real root of x⁶ = x + 1, the base of the additive low-discrepancy sequence in five dimensions (Roberts 2018, R sequence). */
const BASE = 1.1347241384015194

/**
 * `count` quasi-random standard normal points in five dimensions, row by row; each column is shifted and scaled to
 * mean 0 and variance 1. The same `start` gives the same points; different starts give fresh, unused ones.
 */
export function deliveryNodes(count: number, start = 0): Float64Array {
  const nodes = new Float64Array(count * ERROR_DIMENSIONS)
  let step = 1
  for (let d = 0; d < ERROR_DIMENSIONS; d++) {
    step /= BASE
    let mean = 0
    for (let k = 0; k < count; k++) {
      const turn = 0.5 + (start + k + 1) * step
      const z = normalQuantile(Math.max(1e-12, turn - Math.floor(turn)))
      nodes[k * ERROR_DIMENSIONS + d] = z
      mean += z
    }
    standardise(nodes, d, count, mean / count)
  }
  return nodes
}

function standardise(nodes: Float64Array, dimension: number, count: number, mean: number): void {
  let square = 0
  for (let k = 0; k < count; k++) {
    nodes[k * ERROR_DIMENSIONS + dimension] -= mean
    square += nodes[k * ERROR_DIMENSIONS + dimension] * nodes[k * ERROR_DIMENSIONS + dimension]
  }
  const scale = Math.sqrt(count / square)
  for (let k = 0; k < count; k++) nodes[k * ERROR_DIMENSIONS + dimension] *= scale
}
