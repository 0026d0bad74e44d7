import type { Command } from '../keys/binding.js'
import type { Filter } from './app-state.js'

const PAGE = 10

/** The cursor of a list after a command: by one around its ends, by pages and to its ends up to them. */
export function moved(cursor: number, command: Command, count: number): number {
  if (count === 0) return 0
  switch (command) {
    case 'up':
      return (cursor - 1 + count) % count
    case 'down':
      return (cursor + 1) % count
    case 'page-up':
      return Math.max(0, cursor - PAGE)
    case 'page-down':
      return Math.min(count - 1, cursor + PAGE)
    case 'first':
      return 0
    case 'last':
      return count - 1
    default:
      return Math.min(cursor, count - 1)
  }
}

/** The first row shown of a long page after a command; the screen stops at its end. */
export function scrolled(scroll: number, command: Command): number {
  switch (command) {
    case 'up':
      return Math.max(0, scroll - 1)
    case 'down':
      return scroll + 1
    case 'page-up':
      return Math.max(0, scroll - PAGE)
    case 'page-down':
      return scroll + PAGE
    case 'first':
      return 0
    default:
      return scroll
  }
}

/** Entries of which all the filter's words are said. */
export function filtered<Entry>(
  entries: readonly Entry[],
  filter: Filter | undefined,
  said: (entry: Entry) => string,
): readonly Entry[] {
  const words = (filter?.words ?? '').toLowerCase().split(/\s+/).filter(Boolean)
  if (words.length === 0) return entries
  return entries.filter((entry) => {
    const text = said(entry).toLowerCase()
    return words.every((word) => text.includes(word))
  })
}

export interface FilteredList {
  readonly cursor: number
  readonly filter?: Filter
}

const LONGEST_FILTER = 40

/** A list's filter after a command; null where the command is none of its own. */
export function reduceFilter<List extends FilteredList>(list: List, command: Command): List | null {
  const { filter } = list
  if (command === 'filter') return { ...list, filter: { words: filter?.words ?? '', isOpen: true } }
  if (!filter?.isOpen) {
    // Esc first lets everything be seen again.
    return command === 'back' && filter ? { ...list, cursor: 0, filter: undefined } : null
  }
  if (typeof command === 'object') {
    return { ...list, cursor: 0, filter: { ...filter, words: (filter.words + command.type).slice(0, LONGEST_FILTER) } }
  }
  if (command === 'erase') return { ...list, cursor: 0, filter: { ...filter, words: filter.words.slice(0, -1) } }
  if (command === 'enter') return { ...list, filter: filter.words === '' ? undefined : { ...filter, isOpen: false } }
  if (command === 'back') return { ...list, cursor: 0, filter: undefined }
  return null
}
