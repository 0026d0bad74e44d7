import { shownThrows } from '../../sim/world/block/shown-throws.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { rivalThrowWords, scoreAfter } from '../words/rival-words.js'

/** What a rival's block shows now that the player has thrown once more; nothing where that is nothing new. */
export function rivalLines(before: BlockState, after: BlockState, rival: BlockState): string[] {
  const known = shownThrows(before, rival).length
  const shown = shownThrows(after, rival)
  const lines = shown
    .slice(known)
    .map((_, index) => rivalThrowWords(rival, shown.slice(0, known + index + 1), 'Theirs'))
  if (after.spot) return lines
  return [...lines, `You ${scoreAfter(after, after.throws)}, that block ${scoreAfter(rival, rival.throws)}.`]
}
