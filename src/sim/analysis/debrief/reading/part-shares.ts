import type { Decision } from '../../../world/block/types.js'

/** The parts a first-ball choice is made of. */
export const CHOICE_PARTS = ['ball', 'target', 'feet', 'speed'] as const
export type ChoicePart = (typeof CHOICE_PARTS)[number]

export type PartShares = Readonly<Record<ChoicePart, number>>

/**
 * Divides the gain from one choice to another among the parts that differ: each part gets the mean gain of putting it
 * right, over all orders in which the parts can be put right (Shapley 1953). The shares sum to the whole gain.
 *
 * @param worthOf worth of any choice mixed from the two
 */
export function partShares(from: Decision, to: Decision, worthOf: (decision: Decision) => number): PartShares {
  const shares: Record<ChoicePart, number> = { ball: 0, target: 0, feet: 0, speed: 0 }
  const worthOfParts = keptBySet((parts) => worthOf(mixed(from, to, parts)))
  for (const order of orders(CHOICE_PARTS)) {
    let done = 0
    for (const part of order) {
      const next = done | bitOf(part)
      shares[part] += (worthOfParts(next) - worthOfParts(done)) / ORDERS
      done = next
    }
  }
  return shares
}

/** `from` with the named parts taken from `to`; the release goes with the ball. */
export function withParts(from: Decision, to: Decision, parts: readonly ChoicePart[]): Decision {
  return mixed(
    from,
    to,
    parts.reduce((set, part) => set | bitOf(part), 0),
  )
}

const ORDERS = 24
const bitOf = (part: ChoicePart): number => 1 << CHOICE_PARTS.indexOf(part)

function mixed(from: Decision, to: Decision, parts: number): Decision {
  const take = <T>(part: ChoicePart, read: (one: Decision) => T): T => read(parts & bitOf(part) ? to : from)
  return {
    ballId: take('ball', (one) => one.ballId),
    release: take('ball', (one) => one.release),
    aim: {
      feetBoard: take('feet', (one) => one.aim.feetBoard),
      targetBoard: take('target', (one) => one.aim.targetBoard),
      speedStep: take('speed', (one) => one.aim.speedStep),
    },
  }
}

function keptBySet(compute: (parts: number) => number): (parts: number) => number {
  const kept = new Map<number, number>()
  return (parts) => {
    const known = kept.get(parts)
    if (known !== undefined) return known
    const value = compute(parts)
    kept.set(parts, value)
    return value
  }
}

function orders<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]]
  return items.flatMap((item) => orders(items.filter((other) => other !== item)).map((rest) => [item, ...rest]))
}
