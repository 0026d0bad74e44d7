import type { Answer, Position } from '../../sim/analysis/practice/position.js'
import { idealInterval } from '../../sim/analysis/practice/scoring.js'
import type { Command } from '../keys/binding.js'

/** How sure one can say to be that a choice is sound, in per cent. */
export const SURE_PERCENTS = [50, 60, 70, 80, 90, 95] as const

/** What is being put together as an answer. */
export interface Draft {
  /** Place among choices, of the family under the hand, or 0 and 1 for the ends of a range. */
  readonly cursor: number
  readonly shares: readonly [number, number, number]
  readonly low: number
  readonly high: number
  readonly sharePercent: number
  readonly surePercent: (typeof SURE_PERCENTS)[number]
}

/** An answer as it stands before anything is said. */
export function draftFor(position: Position): Draft {
  const [low, high] = firstRange(position)
  const cursor = position.kind === 'decide' ? (position.standing ?? 0) : 0
  return { cursor, shares: [30, 40, 30], low, high, sharePercent: 50, surePercent: 70 }
}

function firstRange(position: Position): readonly [number, number] {
  if (position.kind !== 'read' || position.question === 'shape' || position.question === 'length') return [15, 20]
  const [low, high] = idealInterval(position.before)
  const half = (value: number): number => Math.round(2 * value) / 2
  return [half(low), half(high)]
}

/** The answer that a draft is. */
export function answerOf(position: Position, { cursor, shares, low, high, sharePercent }: Draft): Answer {
  switch (position.kind) {
    case 'decide':
      return { kind: 'choice', place: cursor }
    case 'throw-or-lane':
      return { kind: 'share', share: sharePercent / 100 }
    case 'call':
      return { kind: 'interval', low, high }
    case 'read':
      return position.question === 'shape' || position.question === 'length'
        ? { kind: 'shares', shares: shares.map((share) => share / 100) }
        : { kind: 'interval', low, high }
  }
}

/** A draft one step on. */
export function stepped(position: Position, draft: Draft, command: Command): Draft {
  const by = command === 'up' ? 1 : command === 'down' ? -1 : 0
  const across = command === 'right' ? 1 : command === 'left' ? -1 : 0
  if (position.kind === 'decide') {
    const count = position.answers.length
    const step = by !== 0 ? -by : across
    return { ...draft, cursor: (draft.cursor + step + count) % count }
  }
  if (position.kind === 'throw-or-lane')
    return { ...draft, sharePercent: Math.min(100, Math.max(0, draft.sharePercent + 10 * (by || across))) }
  if (position.kind === 'read' && (position.question === 'shape' || position.question === 'length')) {
    if (across !== 0) return { ...draft, cursor: (draft.cursor + across + 3) % 3 }
    return by === 0 ? draft : { ...draft, shares: sharesStepped(draft.shares, draft.cursor, by) }
  }
  if (across !== 0) return { ...draft, cursor: across > 0 ? 1 : 0 }
  const end = draft.cursor === 0 ? 'low' : 'high'
  const moved = { ...draft, [end]: Math.max(0, draft[end] + by * 0.5) }
  return moved.low > moved.high ? draft : moved
}

const CHIP = 10

/** Ten per cent taken from the largest other share, or given to the smallest. */
function sharesStepped(shares: Draft['shares'], place: number, by: number): Draft['shares'] {
  const others = [0, 1, 2].filter((one) => one !== place)
  const given = [...shares] as [number, number, number]
  const other = others.reduce((best, one) => {
    const isMore = shares[one]! > shares[best]!
    return isMore === by > 0 && shares[one] !== shares[best] ? one : best
  })
  if (by > 0 ? shares[other]! < CHIP : shares[place]! < CHIP) return shares
  given[place] = shares[place]! + by * CHIP
  given[other] = shares[other]! - by * CHIP
  return given
}
