import { normalDistribution } from '../../exact-math.js'
import { mphToMetresPerSecond } from '../../units.js'
import { callContact, observe } from '../../world/block/seen.js'
import type { Observation, SeeingRules, Truth } from '../../world/block/types.js'

/** A half-open stretch of the real value: everything that shows as the same thing. */
export interface Cell {
  readonly from: number
  readonly to: number
}

/** Spreads beyond which nothing is seen; the normal distribution leaves 1e-12 there. */
const OUT_OF_SIGHT = 7

/** Chance that a normal number falls into a cell. */
export function chanceWithin(cell: Cell, mean: number, spread: number): number {
  if (cell.from - mean > OUT_OF_SIGHT * spread || mean - cell.to > OUT_OF_SIGHT * spread) return 0
  return normalDistribution((cell.to - mean) / spread) - normalDistribution((cell.from - mean) / spread)
}

/** The real values behind one observation. Boards and feet as in Truth, from the bowler's own side. */
export interface SeenCells {
  readonly arrowsBoard: Cell
  readonly breakpointBoard: Cell
  readonly breakpointFeet: Cell
  readonly speedMetresPerSecond: Cell
  /** Board at the headpin's row; null for a ball in the gutter. */
  readonly entryBoard: Cell | null
}

/** Far enough that anything is out of a cell, unless the cell has no end. */
const FAR = 1000
const BISECTIONS = 48
const ENTRY_SEARCH: readonly [number, number] = [-30, 70]

type SeenPart = Pick<Truth, 'breakpointBoard' | 'breakpointFeet' | 'entrySpeedMetresPerSecond'>

/**
 * What may lie behind an observation, found by asking `observe` itself where its answer changes, so that what is shown
 * is defined in one place only.
 */
export function seenCells(seen: Observation, rules: SeeingRules): SeenCells {
  const shows = (part: Partial<SeenPart>, arrowsBoard = 0): Observation =>
    observe({ ...ANY_TRUTH, ...part }, arrowsBoard, seen.standing, rules)
  return {
    arrowsBoard: cellAround(seen.arrowsBoard, (board) => shows({}, board).arrowsBoard === seen.arrowsBoard),
    breakpointBoard: cellAround(
      seen.breakpointBoard,
      (breakpointBoard) => shows({ breakpointBoard }).breakpointBoard === seen.breakpointBoard,
    ),
    breakpointFeet: cellAround(
      seen.breakpointFeet,
      (breakpointFeet) => shows({ breakpointFeet }).breakpointFeet === seen.breakpointFeet,
    ),
    speedMetresPerSecond: cellAround(
      mphToMetresPerSecond(seen.speedMph),
      (entrySpeedMetresPerSecond) => shows({ entrySpeedMetresPerSecond }).speedMph === seen.speedMph,
    ),
    entryBoard: seen.contact === 'gutter' ? null : contactCell(seen.contact),
  }
}

/** The entry boards that are called so. */
function contactCell(contact: Observation['contact']): Cell {
  for (let board = ENTRY_SEARCH[0]; board <= ENTRY_SEARCH[1]; board += 0.25)
    if (callContact(board) === contact) return cellAround(board, (one) => callContact(one) === contact)
  throw new RangeError(`No board is called "${contact}".`)
}

function cellAround(inside: number, isSame: (value: number) => boolean): Cell {
  return { from: edge(inside, inside - FAR, isSame), to: edge(inside, inside + FAR, isSame) }
}

/** Where `isSame` changes between a value inside and one that is outside, or infinite when it never does. */
function edge(inside: number, far: number, isSame: (value: number) => boolean): number {
  if (isSame(far)) return far < inside ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY
  let within = inside
  let without = far
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (within + without) / 2
    if (isSame(middle)) within = middle
    else without = middle
  }
  return (within + without) / 2
}

/** A truth whose fields are replaced one by one; none of it is anyone's. */
const ANY_TRUTH: Truth = {
  path: new Float64Array(0),
  entryBoard: 20,
  entryAngleRadians: 0,
  entrySpeedMetresPerSecond: mphToMetresPerSecond(16),
  breakpointBoard: 10,
  breakpointFeet: 40,
  hookStartFeet: 30,
  rollStartFeet: 50,
  leftLaneFeet: Number.POSITIVE_INFINITY,
  touched: 0,
  laneBefore: { film: { microns: new Float64Array(0) }, laidMicrolitres: 0, wipedMicrolitres: 0 },
  normals: [],
}
