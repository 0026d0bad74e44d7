import type { BlockState, Spot, ThrowRecord } from './types.js'

export const isSameFrame = (one: Spot, other: Spot): boolean =>
  one.phase === other.phase && one.game === other.game && one.frame === other.frame && one.lane === other.lane

/** Whether the frame of the last throw is over, or the practice throw made. */
export function isFrameOver({ throws, spot }: BlockState): boolean {
  const last = throws.at(-1)?.spot
  return last !== undefined && (spot === null || !isSameFrame(last, spot))
}

/**
 * The throws of another block on the same lanes that a player may see: of frames the player has finished all, of the frame being bowled as
 * many as the player has thrown, and nothing of what is to come.
 */
export function shownThrows(mine: BlockState, theirs: BlockState): readonly ThrowRecord[] {
  const last = mine.throws.at(-1)?.spot
  if (!last) return []
  const isOver = isFrameOver(mine)
  return theirs.throws.filter(({ spot }) => {
    const order = placeOf(spot) - placeOf(last)
    return order < 0 || (order === 0 && (isOver || spot.ball <= last.ball))
  })
}

const FRAMES_APART = 1000

/** Where a throw's frame stands in the block; practice comes before the first game. */
const placeOf = ({ phase, game, frame }: Spot): number => (phase === 'practice' ? frame : game * FRAMES_APART + frame)
