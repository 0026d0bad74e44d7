import { normalQuantile, power } from '../exact-math.js'

const DIMENSIONS = 4

/** One possible miss: where in the seen cell at the arrows (0 to 1), and three standard normal numbers. */
export interface DeliveryNode {
  readonly shareOfCell: number
  readonly acrossArrows: number
  readonly spin: number
  readonly rotation: number
}

/**
 * Evenly spread points of the unit cube by powers of the generalised golden ratio, the root of x⁵ = x + 1 (Roberts'
 * R sequence, from memory), each coordinate made exactly even by its rank.
 */
function evenlySpread(count: number): number[][] {
  let root = 1.2
  for (let i = 0; i < 40; i++) root = power(1 + root, 1 / (DIMENSIONS + 1))
  const columns = Array.from({ length: DIMENSIONS }, (_, d) => {
    let step = 1
    for (let i = 0; i <= d; i++) step /= root
    const places = Array.from({ length: count }, (_, k) => (0.5 + (k + 1) * step) % 1)
    const ranked = [...places].sort((a, b) => a - b)
    return places.map((place) => (ranked.indexOf(place) + 0.5) / count)
  })
  return Array.from({ length: count }, (_, k) => columns.map((column) => column[k]))
}

/** Normal numbers from even ones, stretched to a variance of exactly 1. */
function standardised(evens: number[]): number[] {
  const normals = evens.map(normalQuantile)
  const spread = Math.sqrt(normals.reduce((sum, z) => sum + z * z, 0) / normals.length)
  return normals.map((z) => z / spread)
}

function makeNodes(count: number): readonly DeliveryNode[] {
  const points = evenlySpread(count)
  const column = (d: number): number[] => points.map((point) => point[d])
  const across = standardised(column(1))
  const spin = standardised(column(2))
  const rotation = standardised(column(3))
  return points.map(([shareOfCell], k) => ({
    shareOfCell,
    acrossArrows: across[k],
    spin: spin[k],
    rotation: rotation[k],
  }))
}

/*
 * The few throws that stand for everything that could have left the hand. They are the same for every throw and hypothesis: what
 * differs between hypotheses is then their oil alone.
 */
export const knownLineNodes = makeNodes(10)
/** A throw whose aim is not told teaches less, and is judged by fewer. */
export const unseenLineNodes = makeNodes(6)
