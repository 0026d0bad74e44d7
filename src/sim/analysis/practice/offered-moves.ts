import type { RandomSource } from '../../random.js'
import type { Decision } from '../../world/block/types.js'
import { FEET_BOARDS, isWithin, TARGET_BOARDS } from '../../world/bowler/aim-boards.js'

/** Moves of feet and target in boards away from the bowler's own gutter. */
type Move = readonly [feet: number, target: number]

/** The line moved; null where no bowler could stand or aim there. */
export function movedLine(line: Decision, [feet, target]: Move): Decision | null {
  const aim = { ...line.aim, feetBoard: line.aim.feetBoard + feet, targetBoard: line.aim.targetBoard + target }
  return isWithin(aim.feetBoard, FEET_BOARDS) && isWithin(aim.targetBoard, TARGET_BOARDS) ? { ...line, aim } : null
}

const parallel = (boards: number): Move => [boards, boards / 2]

/** Parallel moves either way, as "2 and 1" is taught. */
const EITHER_WAY: readonly Move[] = [-4, -2, 2, 4].map(parallel)
/** Steps of one direction from a small one to a jump. */
const SIZES = [1, 2, 4, 6] as const
/** Ways in which another line differs from a good one: another angle, or the same one elsewhere. */
const ANGLES: readonly Move[] = [
  [-3, 0],
  [3, 0],
  [0, -2],
  [0, 2],
  [3, 3],
  [-3, -3],
  [4, 2],
  [-4, -2],
]
/** The same among ways to shoot at what stands. */
const SPARE_MOVES: readonly Move[] = [
  [0, -4],
  [0, -2],
  [0, 2],
  [0, 4],
  [-6, 0],
  [-3, 0],
  [3, 0],
  [6, 0],
]

/** Parallel moves of one direction, from a small one to a jump. */
export const sizesOf = (direction: 1 | -1): readonly Move[] => SIZES.map((size) => parallel(direction * size))

/** Parallel moves both ways. */
export const eitherWay = (): readonly Move[] => EITHER_WAY

/** Some other lines around one, drawn so that the one lies anywhere among them. */
export function linesAround(
  line: Decision,
  count: number,
  kind: 'first-ball' | 'spare',
  draw: RandomSource,
): Decision[] {
  const moves = [...(kind === 'spare' ? SPARE_MOVES : ANGLES)]
  const drawn: Decision[] = []
  while (drawn.length < count && moves.length > 0) {
    const [move] = moves.splice(Math.floor(draw() * moves.length), 1)
    const other = movedLine(line, move)
    if (other) drawn.push(other)
  }
  return drawn
}
