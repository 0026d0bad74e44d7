import type { Command } from '../keys/binding.js'
import type { AppState } from './app-state.js'
import { goHome } from './home-entries.js'
import { isShortBlockNext, type PracticeState, reducePractice } from './practice-state.js'
import type { TrainerServices } from './services.js'
import { startShortBlock } from './start.js'

/** Practice after a command: further on, gone over to its short block once that has a lane, or left. */
export function practiceOn(
  state: AppState,
  practice: PracticeState,
  command: Command,
  services: TrainerServices,
): AppState {
  if (command === 'enter' && isShortBlockNext(practice))
    return practice.shortBlock ? startShortBlock(state, practice.shortBlock, services) : state
  const next = reducePractice(practice, command)
  return next ? { ...state, screen: { kind: 'practice', practice: next } } : goHome(state)
}
