import type { Command } from '../keys/binding.js'
import type { AppState } from './app-state.js'
import { blockOf, type PlayState } from './play-state.js'
import type { TrainerServices } from './services.js'
import { startBlock } from './start.js'

/** Whether a command asks for the lane of a block once more. */
export const isAgain = (command: Command): command is 'same-luck' | 'other-luck' =>
  command === 'same-luck' || command === 'other-luck'

/** The lane of a block once more, with the luck it had or with another; the guided first frame has none of its own. */
export function again(
  state: AppState,
  play: PlayState,
  command: 'same-luck' | 'other-luck',
  services: TrainerServices,
): AppState {
  if (play.tour !== null) return { ...state, notice: 'The guided first frame is bowled once; choose a block at home.' }
  const seed = command === 'same-luck' ? blockOf(play).seed : services.otherSeed()
  return startBlock(state, play.scenario, seed, services, play.mode)
}
