import type { BlockEvent, BlockState } from '../../sim/world/block/types.js'
import { scoreLines } from '../words/score-lines.js'
import { breakpointPlace, contactWords, fellWords, seenParts } from '../words/throw-words.js'

/** What a throw brought about, in the order it happened. */
export function afterThrowLines(state: BlockState, events: readonly BlockEvent[]): string[] {
  return [...events.flatMap((event) => eventLines(state, event)), ...othersLines(events)]
}

function eventLines(state: BlockState, event: BlockEvent): string[] {
  switch (event.type) {
    case 'throw': {
      const { hand } = state.setup.bowler
      return [`${fellWords(event.record, hand)} Seen: ${seenParts(event.record, hand).join(', ')}.`]
    }
    case 'practice-done':
      return ['Practice is over.']
    case 'frame-done':
      return scoreLines(state.setup.scoring, state.balls[event.game - 1])
    case 'game-done':
      return [`Game ${event.game} ends with ${event.total}.`]
    case 'block-done':
      return [`The block ends with ${event.total}.`]
    case 'field-throw':
      return []
  }
}

/** The field on one line: each bowler's breakpoint and contact, which anyone on the lane can watch. */
function othersLines(events: readonly BlockEvent[]): string[] {
  const others = events.flatMap((event) => (event.type === 'field-throw' ? [event.record] : []))
  if (others.length === 0) return []
  const seen = others.map(({ bowlerName, observation, hand }) =>
    [bowlerName, breakpointPlace(observation), contactWords(observation.contact, hand)].filter(Boolean).join(' '),
  )
  return [`Others: ${seen.join('; ')}.`]
}
