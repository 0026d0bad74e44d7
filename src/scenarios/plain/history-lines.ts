import type { BlockState, ThrowRecord } from '../../sim/world/block/types.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { scoreLines } from '../words/score-lines.js'
import { fellWords, lineWords, seenParts } from '../words/throw-words.js'

/** How many of the latest throws are told. */
const MOST_TOLD = 8

/** What had been thrown when the player comes to a position: each throw with what was seen of it and what it left, and the sheet. */
export function historyLines(state: BlockState): string[] {
  const { throws, spot, setup, balls } = state
  if (throws.length === 0) return ['Nothing has been thrown yet.']
  const here = throws.filter((record) => record.spot.lane === spot?.lane)
  const told = here.slice(-MOST_TOLD)
  const lane = setup.lanes[spot?.lane ?? 0]!.name
  const left = here.length - told.length
  return [
    told.length === 0
      ? `Nothing has been thrown on ${lane} yet.`
      : `What was thrown on ${lane}${left > 0 ? `, the last ${told.length} of ${here.length}` : ''}:`,
    ...told.map((record) => `  ${throwLine(record, state)}`),
    ...balls.flatMap((game) => scoreLines(setup.scoring, game)),
  ]
}

function throwLine(record: ThrowRecord, { setup: { bag, bowler } }: BlockState): string {
  const { spot, decision, standingBefore } = record
  const place = spot.phase === 'practice' ? 'practice' : `${spot.game}-${spot.frame}.${spot.ball}`
  const at = standingBefore === FULL_RACK ? '' : ' at the spare'
  return `${place}${at}: ${lineWords(decision, bag)}; ${seenParts(record, bowler.hand).join(', ')}. ${fellWords(record, bowler.hand)}`
}
