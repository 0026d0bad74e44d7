import type { ImaginedLanes } from '../belief/imagined-lanes.js'
import type { PricedLine } from '../shots/best-line.js'
import { meanOf } from '../shots/direct-worth.js'
import { quadratureWorth } from '../shots/line-quadrature.js'
import { type Bench, judgingBy, worthOnEachLane } from '../shots/worth-matrix.js'

/** Lines with their worth on some lanes, twice over: once to choose by and once, by errors of its own, to count by. */
export interface LinesOnLanes {
  readonly lanes: ImaginedLanes
  /** Line by line, lane by lane. */
  readonly toChooseBy: readonly Float64Array[]
  readonly toCountBy: readonly Float64Array[]
}

/**
 * The best of many uncertain figures looks better than it is, so what is chosen by one set of figures is counted by
 * another: then nothing is gained by error alone.
 */
export function linesOnLanes(bench: Bench, lanes: ImaginedLanes, lines: readonly PricedLine[]): LinesOnLanes {
  const counting = judgingBy(bench, lanes)
  return {
    lanes,
    toChooseBy: lines.map((line) => {
      const known = new Map<ImaginedLanes[number], number>()
      return Float64Array.from(lanes, (lane) => {
        const worth =
          known.get(lane) ?? quadratureWorth(lane, bench.bag[line.ballIndex], bench.profile, line.aim, bench.pricing)
        known.set(lane, worth)
        return worth
      })
    }),
    toCountBy: lines.map((line) => worthOnEachLane(counting, line)),
  }
}

/** What seeing the oil would be worth, in pins. */
export interface InformationWorth {
  /** At the least, chance gains left out. */
  readonly pins: number
  /** The same with them: no throw can teach more. */
  readonly mostPins: number
}

/** What choosing among `lines` with each lane in sight gains over the line that is best without. */
export function informationWorth(bench: Bench, lanes: ImaginedLanes, lines: readonly PricedLine[]): InformationWorth {
  const { toChooseBy, toCountBy } = linesOnLanes(bench, lanes, lines)
  const blind = placeOfMost(toChooseBy.map((worths) => meanOf(worths)))
  let gain = 0
  let most = 0
  for (let lane = 0; lane < lanes.length; lane++) {
    const seeing = placeOfMost(toChooseBy.map((worths) => worths[lane]))
    gain += toCountBy[seeing][lane] - toCountBy[blind][lane]
    most += toChooseBy[seeing][lane] - toChooseBy[blind][lane]
  }
  return { pins: Math.max(0, gain / lanes.length), mostPins: Math.max(0, most / lanes.length) }
}

/** Place of the largest value, the first where several are. */
export function placeOfMost(values: ArrayLike<number>): number {
  let place = 0
  for (let at = 1; at < values.length; at++) if (values[at] > values[place]) place = at
  return place
}
