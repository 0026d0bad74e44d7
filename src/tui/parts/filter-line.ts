import type { Span } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import type { Filter } from '../state/app-state.js'

/** The words a list is narrowed by, to follow its title; nothing where it is not. */
export function filterSpans(filter: Filter | undefined, { glyphs }: Theme): readonly Span[] {
  if (!filter) return []
  const words = filter.isOpen ? `${filter.words}_` : filter.words
  return [
    ['  only: ', 'faint'],
    [`${glyphs.left}${words}${glyphs.right}`, 'accent'],
  ]
}
