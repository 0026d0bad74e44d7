import type { Command } from '../keys/binding.js'
import type { Help } from './app-state.js'

const PAGE_ROWS = 10
/** More rows than either page has; the page itself stops at its end. */
const MOST_SCROLL = 80

/** The open help after a command; null once it is closed. */
export function reduceHelp(help: Help, command: Command): Help | null {
  const scrolled = (by: number) => ({ ...help, scroll: Math.min(MOST_SCROLL, Math.max(0, help.scroll + by)) })
  switch (command) {
    case 'back':
      return null
    case 'view':
      return { page: help.page === 'keys' ? 'words' : 'keys', scroll: 0 }
    case 'up':
      return scrolled(-1)
    case 'down':
      return scrolled(1)
    case 'page-up':
      return scrolled(-PAGE_ROWS)
    case 'page-down':
      return scrolled(PAGE_ROWS)
    case 'first':
      return { ...help, scroll: 0 }
    case 'last':
      return { ...help, scroll: MOST_SCROLL }
    default:
      return help
  }
}
