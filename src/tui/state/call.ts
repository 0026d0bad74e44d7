import { CALL_CONFIDENCES, CALL_CONTACTS } from '../../scenarios/store/block-notes.js'
import type { Command } from '../keys/binding.js'
import type { PlayState } from './play-state.js'

/** The open call after a command. Esc keeps what was called, for it costs nothing; x takes it back. */
export function stepCall(play: PlayState, command: Command): PlayState {
  const { call } = play
  if (!call) return { ...play, open: 'nothing' }
  switch (command) {
    case 'left':
      return { ...play, call: { ...call, contact: neighbour(CALL_CONTACTS, call.contact, -1) } }
    case 'right':
      return { ...play, call: { ...call, contact: neighbour(CALL_CONTACTS, call.contact, 1) } }
    case 'down':
      return { ...play, call: { ...call, confidencePercent: neighbour(CALL_CONFIDENCES, call.confidencePercent, -1) } }
    case 'up':
      return { ...play, call: { ...call, confidencePercent: neighbour(CALL_CONFIDENCES, call.confidencePercent, 1) } }
    case 'remove':
      return { ...play, call: null, open: 'nothing' }
    case 'enter':
    case 'back':
      return { ...play, open: 'nothing' }
    default:
      return play
  }
}

function neighbour<Value>(values: readonly Value[], value: Value, by: 1 | -1): Value {
  const at = Math.min(values.length - 1, Math.max(0, values.indexOf(value) + by))
  return values[at]!
}
