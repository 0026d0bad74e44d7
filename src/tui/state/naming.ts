import { isPlayerName } from '../../scenarios/store/player-name.js'
import type { Command } from '../keys/binding.js'
import type { BlockSource } from './app-state.js'

const LONGEST = { seed: 60, guest: 20 } as const
const GUEST = 'Guest'

/** A seed or a guest's name being typed, after a command; what is taken is settled, what is let go stays as it was. */
export function reduceNaming<Choice extends BlockSource>(choice: Choice, command: Command): Choice {
  const { naming } = choice
  if (!naming) return choice
  const { what, text } = naming
  if (typeof command === 'object') {
    return { ...choice, naming: { what, text: (text + command.type).slice(0, LONGEST[what]) } }
  }
  switch (command) {
    case 'erase':
      return { ...choice, naming: { what, text: [...text].slice(0, -1).join('') } }
    case 'back':
      return { ...choice, naming: null }
    case 'enter': {
      const said = text.trim()
      if (what === 'seed') return { ...choice, naming: null, seed: said, day: null }
      return { ...choice, naming: null, guest: isPlayerName(said) ? said : GUEST }
    }
    default:
      return choice
  }
}

/** Text pasted where a seed or a name is typed. */
export const pastedName = <Choice extends BlockSource>(choice: Choice, text: string): Choice =>
  reduceNaming(choice, { type: text.replace(/[^\u0020-\u007e\u00a0-\uffff]/g, '') })
