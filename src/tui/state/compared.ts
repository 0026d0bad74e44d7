import type { BlockState } from '../../sim/world/block/types.js'
import type { Compared } from './app-state.js'

/** Whether figures are those of a block: others who bowl it have the same lanes and the same luck. */
export const isComparedWith = ({ begun }: Pick<Compared, 'begun'>, { setup, seed }: BlockState): boolean =>
  begun.setup === setup && begun.seed === seed
