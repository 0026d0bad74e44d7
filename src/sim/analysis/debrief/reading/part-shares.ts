import type { Decision } from '../../../world/block/types.js'

/** The parts a choice is made of. */
export const CHOICE_PARTS = ['ball', 'slide', 'target', 'speed'] as const
export type ChoicePart = (typeof CHOICE_PARTS)[number]

export type PartShares = Readonly<Record<ChoicePart, number>>

/**
 * Divides what is charged for one choice against another among the parts that differ: each part gets the mean of what putting
 * it right saves, over all orders in which the parts can be put right (Shapley 1953). Whoever may put some parts right will
 * leave those that save nothing, so the saving of a set is that of its best subset, and never more than the charge: shares are
 * then never below 0 and none is larger than the whole. They add up to the charge to rounding.
 *
 * @param chargedPins what is charged for `from`; `to` costs nothing
 * @param chargeOf what is charged for any choice mixed from the two
 */
export function partShares(
  from: Decision,
  to: Decision,
  chargedPins: number,
  chargeOf: (decision: Decision) => number,
): PartShares {
  const saved = new Float64Array(SETS)
  for (let set = 1; set < SETS; set++) {
    const own = set === ALL ? chargedPins : chargedPins - chargeOf(mixed(from, to, set))
    saved[set] = Math.min(chargedPins, Math.max(0, own))
    for (const bit of BITS) if (set & bit) saved[set] = Math.max(saved[set], saved[set & ~bit])
  }
  const shares: Record<ChoicePart, number> = { ball: 0, slide: 0, target: 0, speed: 0 }
  for (const order of orders(CHOICE_PARTS)) {
    let done = 0
    for (const part of order) {
      const next = done | bitOf(part)
      shares[part] += (saved[next] - saved[done]) / ORDERS
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
const BITS = CHOICE_PARTS.map(bitOf)
const SETS = 1 << CHOICE_PARTS.length
const ALL = SETS - 1

function mixed(from: Decision, to: Decision, parts: number): Decision {
  const take = <T>(part: ChoicePart, read: (one: Decision) => T): T => read(parts & bitOf(part) ? to : from)
  return {
    ballId: take('ball', (one) => one.ballId),
    release: take('ball', (one) => one.release),
    aim: {
      feetBoard: take('slide', (one) => one.aim.feetBoard),
      targetBoard: take('target', (one) => one.aim.targetBoard),
      speedStep: take('speed', (one) => one.aim.speedStep),
    },
  }
}

function orders<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]]
  return items.flatMap((item) => orders(items.filter((other) => other !== item)).map((rest) => [item, ...rest]))
}
