import { isShortBlockOver } from '../../sim/analysis/practice/short-block.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { CameToBe } from './origin.js'

/** Whether a block has had all its throws, as far as it is meant to go. */
export const isBlockOver = (cameToBe: CameToBe, state: BlockState): boolean =>
  cameToBe === 'short-block' ? isShortBlockOver(state) : state.spot === null
