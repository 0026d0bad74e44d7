/**
 * Leaves: which of the ten pins stand. A leave is a ten-bit mask; bit (n - 1) set means that pin n stands.
 * Neighbours are pins 12 in apart in the triangle, or one directly behind the other.
 */

export const PIN_COUNT = 10
/** Every pin standing. */
export const FULL_RACK = 1023

const HEAD_PIN = 1

/** Bit of pin `pin` (1 to 10). */
export const pinBit = (pin: number): number => 1 << (pin - 1)

/** Mask of the listed pins. */
export const maskOf = (pins: readonly number[]): number => pins.reduce((mask, pin) => mask | pinBit(pin), 0)

/** Standing pins in ascending order. */
export function listPins(mask: number): number[] {
  const pins: number[] = []
  for (let pin = 1; pin <= PIN_COUNT; pin++) if (mask & pinBit(pin)) pins.push(pin)
  return pins
}

/** How many pins stand. */
export function countPins(mask: number): number {
  let count = 0
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++
  return count
}

/** Pin at the same place in the mirrored triangle; index is the pin number. */
export const MIRROR_PIN: readonly number[] = [0, 1, 3, 2, 6, 5, 4, 10, 9, 8, 7]

/** The same leave seen in a mirror: 2 and 3, 4 and 6, 7 and 10, 8 and 9 change places. */
export function mirrorMask(mask: number): number {
  let mirrored = 0
  for (let pin = 1; pin <= PIN_COUNT; pin++) if (mask & pinBit(pin)) mirrored |= pinBit(MIRROR_PIN[pin]!)
  return mirrored
}

const TOUCHING_PAIRS: readonly (readonly [number, number])[] = [
  [1, 2],
  [1, 3],
  [2, 3],
  [2, 4],
  [2, 5],
  [3, 5],
  [3, 6],
  [4, 5],
  [5, 6],
  [4, 7],
  [4, 8],
  [5, 8],
  [5, 9],
  [6, 9],
  [6, 10],
  [7, 8],
  [8, 9],
  [9, 10],
  [1, 5],
  [2, 8],
  [3, 9],
]

const NEIGHBOURS: readonly number[] = (() => {
  const neighbours = new Array<number>(PIN_COUNT + 1).fill(0)
  for (const [first, second] of TOUCHING_PAIRS) {
    neighbours[first]! |= pinBit(second)
    neighbours[second]! |= pinBit(first)
  }
  return neighbours
})()

/** Two pins side by side, and the pin immediately ahead of both. */
const PAIRS_BEHIND: readonly (readonly [pair: number, ahead: number])[] = [
  [maskOf([2, 3]), pinBit(1)],
  [maskOf([4, 5]), pinBit(2)],
  [maskOf([5, 6]), pinBit(3)],
  [maskOf([7, 8]), pinBit(4)],
  [maskOf([8, 9]), pinBit(5)],
  [maskOf([9, 10]), pinBit(6)],
]

/** True when the standing pins fall into two or more groups of neighbours. */
export function hasGap(mask: number): boolean {
  let group = mask & -mask
  for (;;) {
    let grown = group
    for (let pin = 1; pin <= PIN_COUNT; pin++) if (group & pinBit(pin)) grown |= NEIGHBOURS[pin]! & mask
    if (grown === group) return group !== mask
    group = grown
  }
}

/**
 * Split by the rule book's two clauses (IBF 2.1.8): the head pin is down and at least one pin is down between
 * standing pins, or immediately ahead of two of them. Read literally this holds for 459 leaves.
 */
export function isSplit(mask: number): boolean {
  if (mask & HEAD_PIN || mask === 0) return false
  if (hasGap(mask)) return true
  return PAIRS_BEHIND.some(([pair, ahead]) => (mask & pair) === pair && (mask & ahead) === 0)
}

/** Wash-out: the head pin stands and there is a gap. A trade word without rule-book standing. */
export const isWashout = (mask: number): boolean => (mask & HEAD_PIN) !== 0 && hasGap(mask)

const TRADE_NAMES: readonly (readonly [name: string, pins: readonly number[]])[] = [
  ['big four', [4, 6, 7, 10]],
  ['baby split', [3, 10]],
  ['baby split with company', [3, 9, 10]],
  ['bucket', [2, 4, 5, 8]],
  ['lily', [5, 7, 10]],
  ['Greek church', [4, 6, 7, 9, 10]],
  ['Christmas tree', [3, 7, 10]],
  ['picket fence', [1, 3, 6, 10]],
  ['sleeper', [2, 8]],
  ['bedposts', [7, 10]],
  ['spread eagle', [2, 3, 4, 6, 7, 10]],
  ['back row', [7, 8, 9, 10]],
]

const NAME_BY_MASK: ReadonlyMap<number, string> = new Map(
  TRADE_NAMES.flatMap(([name, pins]) => {
    const mask = maskOf(pins)
    return [
      [mask, name],
      [mirrorMask(mask), name],
    ] as const
  }),
)

/**
 * What bowlers call a leave: "10 pin", "4-6-7-10 big four", "1-2-4-10 washout", "4-9 split", or the bare list
 * "3-6-10". Zero is "strike" (nothing stands), 1023 "full rack".
 */
export function leaveName(mask: number): string {
  if (mask === 0) return 'strike'
  if (mask === FULL_RACK) return 'full rack'
  const pins = listPins(mask)
  if (pins.length === 1) return `${pins[0]} pin`
  const list = pins.join('-')
  const name = NAME_BY_MASK.get(mask)
  if (name !== undefined) return `${list} ${name}`
  if (isWashout(mask)) return `${list} washout`
  return isSplit(mask) ? `${list} split` : list
}
