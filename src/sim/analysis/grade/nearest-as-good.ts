import { FEET_BOARDS, TARGET_BOARDS } from '../../world/bowler/aim-boards.js'
import { SPEED_STEPS } from '../shots/best-line.js'
import type { JudgedThrow } from '../shots/worth-matrix.js'
import type { FairSearch } from './fair-search.js'

/** What it takes to change the speed or the ball, counted in boards, when the shortest change is looked for. */
const SPEED_CHANGE_BOARDS = 2
const BALL_CHANGE_BOARDS = 3
/** Half-board lines around the one thrown last are looked at this far away; beyond, those of the sweep. */
const AROUND_FEET_BOARDS = 2
const AROUND_TARGET_BOARDS = 1.5
/** The sweep looks at few lanes: a line that trails there by more than this is not as good. */
const SWEPT_WITHIN_PINS = 0.8
/** So many of the nearest are judged one after the other, and as many spread over the rest. */
const NEAREST = 16
const SPREAD = 12

/** How far one choice is from another: boards of feet and target, with a change of speed or ball counted as some. */
export function distanceBetween(a: JudgedThrow, b: JudgedThrow): number {
  return (
    Math.abs(a.aim.feetBoard - b.aim.feetBoard) +
    Math.abs(a.aim.targetBoard - b.aim.targetBoard) +
    (a.aim.speedStep === b.aim.speedStep ? 0 : SPEED_CHANGE_BOARDS) +
    (a.ballIndex === b.ballIndex ? 0 : BALL_CHANGE_BOARDS)
  )
}

interface Candidate extends JudgedThrow {
  readonly distance: number
  readonly worth: number
}

/**
 * The choice nearest to `from` that is as good as the leader. Good lines lie on long ridges, so the very best one may be
 * far away while a step or two would do.
 */
export function nearestAsGood(wanted: {
  readonly search: FairSearch
  readonly from: JudgedThrow
  readonly leader: JudgedThrow
  readonly isGood: (thrown: JudgedThrow) => boolean
}): JudgedThrow {
  const { search, from, leader, isGood } = wanted
  const farthest = distanceBetween(from, leader)
  const candidates = [...aroundLast(search, from), ...swept(search, from)]
    .filter(({ distance }) => distance < farthest)
    .sort((a, b) => a.distance - b.distance || b.worth - a.worth)
  const near = candidates.slice(0, NEAREST)
  const rest = spreadOut(candidates.slice(NEAREST), SPREAD)
  const found = [...near, ...rest].find(isGood)
  return found ? { ballIndex: found.ballIndex, aim: found.aim, release: 'strike' } : leader
}

/** Lines of the sweep that look as good there. */
function swept({ sweeps, lines }: FairSearch, from: JudgedThrow): Candidate[] {
  const least = bestSwept(sweeps) - SWEPT_WITHIN_PINS
  return sweeps.flatMap(({ ballIndex, worth }) =>
    Array.from(worth.keys())
      .filter((at) => worth[at] >= least)
      .map((at) => {
        const { feetBoard, targetBoard } = lines[Math.floor(at / SPEED_STEPS.length)]
        const aim = { feetBoard, targetBoard, speedStep: SPEED_STEPS[at % SPEED_STEPS.length] }
        return candidate({ ballIndex, aim, release: 'strike' }, from, worth[at])
      }),
  )
}

/** Half-board lines of the same ball and speed around the last one, whose neighbours in the sweep look as good. */
function aroundLast(search: FairSearch, from: JudgedThrow): Candidate[] {
  const { sweeps } = search
  const own = sweeps.find(({ ballIndex }) => ballIndex === from.ballIndex)
  if (!own || (from.release ?? 'strike') !== 'strike') return []
  const least = bestSwept(sweeps) - SWEPT_WITHIN_PINS
  const worthAt = sweptWorthOf(search, own.worth, from.aim.speedStep)
  const around: Candidate[] = []
  for (let feet = -AROUND_FEET_BOARDS; feet <= AROUND_FEET_BOARDS; feet += 0.5)
    for (let target = -AROUND_TARGET_BOARDS; target <= AROUND_TARGET_BOARDS; target += 0.5) {
      const feetBoard = from.aim.feetBoard + feet
      const targetBoard = from.aim.targetBoard + target
      if (feetBoard < FEET_BOARDS[0] || feetBoard > FEET_BOARDS[1]) continue
      if (targetBoard < TARGET_BOARDS[0] || targetBoard > TARGET_BOARDS[1]) continue
      const worth = Math.max(worthAt(Math.floor(feetBoard), targetBoard), worthAt(Math.ceil(feetBoard), targetBoard))
      const isSwept = Number.isInteger(feetBoard) && worth > Number.NEGATIVE_INFINITY
      if (worth < least || isSwept) continue
      around.push(candidate({ ...from, aim: { ...from.aim, feetBoard, targetBoard }, release: 'strike' }, from, worth))
    }
  return around
}

function sweptWorthOf({ lines }: FairSearch, worth: Float64Array, speedStep: -1 | 0 | 1) {
  const step = SPEED_STEPS.indexOf(speedStep)
  const places = new Map(lines.map(({ feetBoard, targetBoard }, at) => [`${feetBoard} ${targetBoard}`, at]))
  return (feetBoard: number, targetBoard: number): number => {
    const at = places.get(`${feetBoard} ${targetBoard}`)
    return at === undefined ? Number.NEGATIVE_INFINITY : worth[at * SPEED_STEPS.length + step]
  }
}

function bestSwept(sweeps: FairSearch['sweeps']): number {
  let most = Number.NEGATIVE_INFINITY
  for (const { worth } of sweeps) for (const one of worth) if (one > most) most = one
  return most
}

const candidate = (thrown: JudgedThrow, from: JudgedThrow, worth: number): Candidate => ({
  ...thrown,
  distance: distanceBetween(from, thrown),
  worth,
})

/** Up to `count` of a sorted list at equal steps, the first among them. */
function spreadOut<T>(sorted: readonly T[], count: number): T[] {
  if (sorted.length <= count) return [...sorted]
  return Array.from({ length: count }, (_, k) => sorted[Math.floor((k * sorted.length) / count)])
}
