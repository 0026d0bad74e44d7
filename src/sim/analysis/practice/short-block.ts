import type { BlockState } from '../../world/block/types.js'

/** Frames of the short block that practice ends with: enough to meet a changing lane, short enough to stay within the session. */
export const SHORT_BLOCK_FRAMES = 6

/** Whether a short block has had all its frames. */
export const isShortBlockOver = ({ spot }: Pick<BlockState, 'spot'>): boolean =>
  spot === null || (spot.phase === 'game' && (spot.game > 1 || spot.frame > SHORT_BLOCK_FRAMES))
