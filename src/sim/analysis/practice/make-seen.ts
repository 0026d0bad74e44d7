import { metresToFeet } from '../../units.js'
import type { BlockSetup, BlockState, Decision, ThrowRecord } from '../../world/block/types.js'
import { laneClassOf, measurePattern } from '../../world/lane/pattern.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { type Belief, weights } from '../belief/belief.js'
import { innovationOf } from '../debrief/reading/innovation.js'
import { meantPath } from '../debrief/reading/meant-path.js'
import { meantEntries } from './make-decide.js'
import type { CallPosition, Family, ReadPosition, ReadQuestion, ThrowOrLanePosition, Vanishes } from './position.js'
import { type SightMark, weightsWhenVanished } from './vanishing.js'

/** Figures are kept as so many equally likely values. */
const LAW_VALUES = 40
/** Lengths of these classes; common practice, no source. */
const SHORT_FEET = 37
const LONG_FEET = 42

const to = (steps: number) => (value: number) => Math.round(value * steps) / steps

/** Values in the middles of equally likely stretches of a weighted sample, linear between its sorted weights' middles. */
function equallyLikely(values: ArrayLike<number>, shares: ArrayLike<number>, count = LAW_VALUES): number[] {
  const order = Array.from(values, (_, i) => i).sort((a, b) => values[a] - values[b] || a - b)
  const law: number[] = []
  let at = 0
  let below = 0
  for (let k = 0; k < count; k++) {
    const mark = (k + 0.5) / count
    while (at < order.length - 1 && below + shares[order[at]] < mark) below += shares[order[at++]]
    law.push(values[order[at]])
  }
  return law
}

export function familyOf(lengthFeet: number, ratio: number): Family {
  const laneClass = laneClassOf(ratio)
  return {
    length: lengthFeet <= SHORT_FEET ? 'short' : lengthFeet >= LONG_FEET ? 'long' : 'medium',
    shape: laneClass === 'sport' ? 'flat' : laneClass === 'challenge' ? 'between' : 'houseLike',
  }
}

/** The oil of a lane as it lay before the first ball. */
export interface FreshOil {
  readonly lengthFeet: number
  readonly volumeMillilitres: number
  readonly ratio: number
}

export function freshOil(begun: BlockState, lane: number): FreshOil {
  const { lengthMetres, volumeMicrolitres, ratio } = measurePattern(begun.lanes[lane].film)
  return { lengthFeet: metresToFeet(lengthMetres), volumeMillilitres: volumeMicrolitres / 1000, ratio }
}

const SHAPES = ['flat', 'between', 'houseLike'] as const
const LENGTHS = ['short', 'medium', 'long'] as const

/** What an observer with these weights answers. */
function idealAnswer(question: ReadQuestion, { hypotheses }: Belief, shares: Float64Array): number[] {
  const { lengthFeet, volumeMillilitres, ratio } = hypotheses
  switch (question) {
    case 'shape':
    case 'length': {
      const sums = [0, 0, 0]
      shares.forEach((share, i) => {
        const family = familyOf(lengthFeet[i], ratio[i])
        sums[question === 'shape' ? SHAPES.indexOf(family.shape) : LENGTHS.indexOf(family.length)] += share
      })
      return sums.map(to(1000))
    }
    case 'lengthFeet':
      return equallyLikely(lengthFeet, shares).map(to(2))
    case 'volumeMillilitres':
      return equallyLikely(volumeMillilitres, shares).map(to(10))
    case 'ratio':
      return equallyLikely(ratio, shares).map(to(10))
  }
}

function truthOf(question: ReadQuestion, oil: FreshOil): number {
  const family = familyOf(oil.lengthFeet, oil.ratio)
  if (question === 'shape') return SHAPES.indexOf(family.shape)
  if (question === 'length') return LENGTHS.indexOf(family.length)
  return to(10)(oil[question])
}

/** Squared distance the shares moved, or the part of the interval's width that went, from which on there is evidence to read. */
const MOVED_SHARES = 0.03
const KEPT_WIDTH = 0.8

/** Whether what is on the screen tells anything: the answer differs from what it was before the first throw. */
function tellsSomething(question: ReadQuestion, before: readonly number[], now: readonly number[]): boolean {
  if (question === 'shape' || question === 'length')
    return before.reduce((sum, share, i) => sum + (share - now[i]) * (share - now[i]), 0) >= MOVED_SHARES
  const width = (law: readonly number[]): number =>
    law[Math.floor(0.9 * law.length)] - law[Math.floor(0.1 * law.length)]
  return width(before) > 0 && width(now) <= KEPT_WIDTH * width(before)
}

type ReadParts = Pick<ReadPosition, 'question' | 'vanishesFeet' | 'ideal' | 'before' | 'truth'>

export interface Seen {
  readonly setup: BlockSetup
  readonly atFirst: Belief
  /** Before the last throw, and after it. */
  readonly before: Belief
  readonly after: Belief
  readonly last: ThrowRecord
  readonly oil: FreshOil
}

/** A question about the oil; null where the throws on the screen tell nothing of it. */
export function readParts(seen: Seen, question: ReadQuestion, vanishesFeet: Vanishes): ReadParts | null {
  const { setup, atFirst, before, after, last, oil } = seen
  const shares =
    vanishesFeet === null ? weights(after) : weightsWhenVanished(setup, before, last, vanishesFeet as SightMark)
  if (!shares) return null
  const ideal = idealAnswer(question, vanishesFeet === null ? after : before, Float64Array.from(shares))
  const first = idealAnswer(question, atFirst, Float64Array.from(weights(atFirst)))
  if (!tellsSomething(question, first, ideal)) return null
  return { question, vanishesFeet, ideal, before: first, truth: truthOf(question, oil) }
}

/** A line is worth calling where the oil could take it to more than one place. */
const LEAST_CALL_SPREAD_BOARDS = 0.4
const MOST_CALL_SPREAD_BOARDS = 6

/** The call of a line; null where everybody knows where it goes, or nobody could. */
export function callParts(
  state: BlockState,
  belief: Belief,
  decision: Decision,
): Pick<CallPosition, 'decision' | 'ideal' | 'truth'> | null {
  const { setup, spot } = state
  if (!spot) return null
  const entries = meantEntries(setup, belief, spot.lane, decision)
  if (entries.some((entry) => !Number.isFinite(entry))) return null
  const ideal = equallyLikely(entries, weights(belief)).map(to(10))
  const spread = ideal[35] - ideal[4]
  if (spread < LEAST_CALL_SPREAD_BOARDS || spread > MOST_CALL_SPREAD_BOARDS) return null
  return { decision, ideal, truth: to(10)(meantPath(state, decision).entryBoard) }
}

/** A surprise of fewer boards than this needs no explaining. */
const LEAST_SURPRISE_BOARDS = 1
/** Where the eye was off by more than this, the question would be about what never happened. */
const MOST_MISSEEN_BOARDS = 1

/** What part of the last throw's surprise was delivery; null where there was no surprise. */
export function throwOrLaneParts({
  setup,
  before,
  after,
  last,
}: Seen): Pick<ThrowOrLanePosition, 'ideal' | 'predictedBoard' | 'shownBoard'> | null {
  if (last.standingBefore !== FULL_RACK) return null
  const innovation = innovationOf(setup, before, after, last)
  if (!innovation) return null
  const { predictedBoard, shownBoard, deliveryShare } = innovation
  if (Math.abs(shownBoard - predictedBoard) < LEAST_SURPRISE_BOARDS) return null
  if (Math.abs(shownBoard - last.truth.entryBoard) > MOST_MISSEEN_BOARDS) return null
  return { ideal: to(100)(deliveryShare), predictedBoard: to(10)(predictedBoard), shownBoard: to(10)(shownBoard) }
}
