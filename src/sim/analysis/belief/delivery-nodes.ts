import { normalQuantile, power } from '../../exact-math.js'
import { forEachBetween } from './between-throws.js'

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

/** Points in an order in which each is the nearest left to the one before, so that what lies between two is much alike. */
function inShortSteps(points: readonly number[][]): number[][] {
  const left = points.slice(1)
  const ordered = [points[0]]
  while (left.length > 0) {
    const from = ordered[ordered.length - 1]
    const away = left.map((point) => point.reduce((sum, x, d) => sum + (x - from[d]) * (x - from[d]), 0))
    ordered.push(...left.splice(away.indexOf(Math.min(...away)), 1))
  }
  return ordered
}

/** Normal numbers from even ones, moved and stretched so that the points judged on the line through them have mean 0 and variance 1. */
function standardised(evens: number[], between: number): number[] {
  const normals = evens.map(normalQuantile)
  let count = 0
  let sum = 0
  let squares = 0
  forEachBetween(normals.length, between, (k, next, share) => {
    const z = normals[k] + share * (normals[next] - normals[k])
    count++
    sum += z
    squares += z * z
  })
  const mean = sum / count
  const spread = Math.sqrt(squares / count - mean * mean)
  return normals.map((z) => (z - mean) / spread)
}

/** Throws that are rolled, and how many parts the way from one to the next is divided into when they are judged. */
export interface NodeLine {
  readonly nodes: readonly DeliveryNode[]
  readonly between: number
}

function makeNodes(count: number, between: number): NodeLine {
  const points = inShortSteps(evenlySpread(count))
  const column = (d: number): number[] => points.map((point) => point[d])
  const across = standardised(column(1), between)
  const spin = standardised(column(2), between)
  const rotation = standardised(column(3), between)
  const nodes = points.map(([shareOfCell], k) => ({
    shareOfCell,
    acrossArrows: across[k],
    spin: spin[k],
    rotation: rotation[k],
  }))
  return { nodes, between }
}

/*
 * The few throws that stand for everything that could have left the hand. They are the same for every throw and hypothesis: what
 * differs between hypotheses is then their oil alone. Where a throw ends changes smoothly from one to the next, so what
 * lies between two is judged as well without being rolled: a handful of single throws would speak for or against oil by
 * whether one of them happens to fall into the cell that was seen.
 */
export const knownLineNodes = makeNodes(10, 4)
/** A throw whose aim is not told is judged by fewer, in order of their direction. */
export const unseenLineNodes = makeNodes(8, 8)
