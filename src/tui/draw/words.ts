import type { Call, Mode } from '../../scenarios/store/block-notes.js'
import { contactWords, seenParts } from '../../scenarios/words/throw-words.js'
import type { BlockSetup, Spot, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'

/**
 * What the eye saw of a throw; on a pair of lanes also on which one, for the next throw is on the other. The lead-in and then
 * the last of what was seen give way where there is no room for them.
 */
export function seenWords(record: ThrowRecord, { lanes, bowler }: BlockSetup, columns: number): string {
  const parts = seenParts(record, bowler.hand)
  const where = lanes.length === 2 ? [`Seen on ${lanes[record.spot.lane]!.name}: `] : []
  const all = parts.join(', ')
  const lead = [...where, 'Seen: '].find((words) => words.length + all.length <= columns)
  if (lead !== undefined) return lead + all
  const kept = parts.findLastIndex((_, last) => parts.slice(0, last + 1).join(', ').length <= columns)
  return parts.slice(0, kept + 1).join(', ')
}

/** Where the block stands, without the lane. */
export function placeWords(spot: Spot, games: number): string {
  if (spot.phase === 'practice') return `Practice throw ${spot.frame}`
  const game = games > 1 ? `Game ${spot.game} of ${games}, frame` : 'Frame'
  return `${game} ${spot.frame}, ball ${spot.ball}`
}

/** A short name for a throw in a list. */
export function throwLabel(spot: Spot): string {
  if (spot.phase === 'practice') return `p${spot.frame}`
  return spot.ball === 1 ? String(spot.frame) : `${spot.frame}${'abc'[spot.ball - 1]}`
}

export const MODE_WORDS: Readonly<Record<Mode, string>> = {
  drill: 'grades at once',
  block: 'grades at the end',
  test: 'grades in the debrief',
}

/** What was called before a throw. */
export const callWords = ({ contact, confidencePercent }: Call, hand: Hand): string =>
  `${contactWords(contact, hand)}, ${confidencePercent} % sure`
