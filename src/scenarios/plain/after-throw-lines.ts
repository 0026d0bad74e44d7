import type { BlockEvent, BlockState } from '../../sim/world/block/types.js'
import { scoreLines } from '../words/score-lines.js'
import { breakpointWords, observationWords, pinWords } from '../words/words.js'

/** What a throw brought about, in the order it happened. */
export function afterThrowLines(state: BlockState, events: readonly BlockEvent[]): string[] {
  return [...events.flatMap((event) => eventLines(state, event)), ...othersLines(events)]
}

function eventLines(state: BlockState, event: BlockEvent): string[] {
  switch (event.type) {
    case 'throw': {
      const { standingBefore, standingAfter, observation, spot } = event.record
      return [
        `${pinWords(standingBefore, standingAfter, spot.ball)} Seen: ${observationWords(observation, standingBefore)}.`,
      ]
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
  const seen = others.map(({ bowlerName, observation }) =>
    [bowlerName, breakpointWords(observation), observation.contact].filter((words) => words !== '').join(' '),
  )
  return [`Others: ${seen.join('; ')}.`]
}
