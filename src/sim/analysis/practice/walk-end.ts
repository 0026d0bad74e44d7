import type { BlockState } from '../../world/block/types.js'

/** Later ones have more first balls behind them than fit. */
const FRAMES_LOOKED_AT = 7

/** Whether a walk looks at nothing more of a block. */
export const isWalkOver = ({ spot }: BlockState): boolean =>
  spot === null || spot.game > 1 || (spot.phase === 'game' && spot.frame > FRAMES_LOOKED_AT)
