/** First and last board of a stretch, both allowed. */
export type Boards = readonly [number, number]

/** Where the slide foot may end. */
export const FEET_BOARDS: Boards = [8, 46]
/** What may be aimed at, at the arrows. */
export const TARGET_BOARDS: Boards = [2, 30]

export function isWithin(board: number, [low, high]: Boards): boolean {
  return board >= low && board <= high
}

/** The board itself, or the nearest one of the stretch. */
export function heldWithin(board: number, [low, high]: Boards): number {
  return Math.min(high, Math.max(low, board))
}
