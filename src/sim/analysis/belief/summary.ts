import { laneClassOf } from '../../world/lane/pattern.js'
import type { Belief } from './belief.js'

/** The middle 80 % of a weighted figure, and its mean. */
export interface Reading {
  readonly low: number
  readonly high: number
  readonly mean: number
}

/** How sure anyone could be of the fresh pattern from what was shown. Shares sum to 1 within a group. */
export interface BeliefSummary {
  readonly lengthFeet: Reading
  readonly volumeMillilitres: Reading
  readonly ratio: Reading
  /** Up to 37 ft, up to 41.5 ft, from 42 ft; common practice, no source. */
  readonly length: { readonly short: number; readonly medium: number; readonly long: number }
  /** Up to 4:1, up to 7:1, above: the classes of measurePattern. */
  readonly shape: { readonly flat: number; readonly between: number; readonly houseLike: number }
}

const SHORT_FEET = 37
const LONG_FEET = 42
const INTERVAL = { from: 0.1, to: 0.9 } as const

export function summarise(belief: Belief): BeliefSummary {
  const { weights, lengthFeet, volumeMillilitres, ratio } = belief.hypotheses
  const length = { short: 0, medium: 0, long: 0 }
  const shape = { flat: 0, between: 0, houseLike: 0 }
  for (let i = 0; i < weights.length; i++) {
    const feet = lengthFeet[i]
    length[feet <= SHORT_FEET ? 'short' : feet >= LONG_FEET ? 'long' : 'medium'] += weights[i]
    const laneClass = laneClassOf(ratio[i])
    shape[laneClass === 'sport' ? 'flat' : laneClass === 'challenge' ? 'between' : 'houseLike'] += weights[i]
  }
  const readings = {
    lengthFeet: readingOf(spreadOverCells(lengthFeet, weights, LENGTH_CELL_FEET), weights),
    volumeMillilitres: readingOf(volumeMillilitres, weights),
    ratio: readingOf(ratio, weights),
  }
  return { ...readings, length, shape }
}

/** A film tells lengths in its rows of half a foot. */
const LENGTH_CELL_FEET = 0.5

/**
 * Figures that are only told in cells of one width, spread evenly over their cell by weight. A quantile of the bare
 * figures would fall on the middle of a cell nearly always, and an interval between two such middles would take in the
 * whole of both end cells: it covers more often than it says (the continuity correction of any statistics text).
 */
function spreadOverCells(values: Float64Array, weights: Float64Array, width: number): Float64Array {
  const weightOf = new Map<number, number>()
  for (const [i, value] of values.entries()) weightOf.set(value, (weightOf.get(value) ?? 0) + weights[i])
  const below = new Map<number, number>()
  return values.map((value, i) => {
    const before = below.get(value) ?? 0
    below.set(value, before + weights[i])
    const whole = weightOf.get(value) ?? 0
    return whole > 0 ? value + width * ((before + weights[i] / 2) / whole - 0.5) : value
  })
}

/** Weighted mean and 10 % and 90 % quantiles, linear between the middles of the sorted weights. */
export function readingOf(values: Float64Array, weights: Float64Array): Reading {
  const order = Array.from(values, (_, i) => i).sort((a, b) => values[a] - values[b] || a - b)
  const mean = values.reduce((sum, value, i) => sum + weights[i] * value, 0)
  return { low: quantile(INTERVAL.from), high: quantile(INTERVAL.to), mean }

  function quantile(share: number): number {
    let below = 0
    let lastPlace = 0
    let lastValue = values[order[0]]
    for (const i of order) {
      const place = below + weights[i] / 2
      if (place >= share) {
        const along = place > lastPlace ? (share - lastPlace) / (place - lastPlace) : 1
        return lastValue + (values[i] - lastValue) * along
      }
      below += weights[i]
      lastPlace = place
      lastValue = values[i]
    }
    return lastValue
  }
}
