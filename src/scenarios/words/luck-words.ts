import type { LuckNote } from '../../sim/analysis/debrief/findings/luck-notes.js'
import { metresToBoard, radiansToDegrees } from '../../sim/units.js'
import type { ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { boardsWords, sideOf } from './change-words.js'
import { contactWords, fellWords } from './throw-words.js'
import { signedPins } from './words.js'

/** The rows of a path, half a foot each, on either side of the arrows. */
const ARROWS_ROWS = [29, 30] as const
/** Less than this at the arrows is on target. */
const LEAST_BOARDS = 0.5
/** Standard deviations by which the largest of the other misses is worth naming. */
const LEAST_MISS = 0.8

/** A line on what luck did to a frame: how much, and by what. @param throws of the block */
export function luckWords(note: LuckNote, throws: readonly ThrowRecord[], games: number, hand: Hand): string {
  const record = throws[note.index]
  const place = `${games > 1 ? `Game ${note.game}, frame` : 'Frame'} ${note.frame}`
  const why = record ? (note.kind === 'delivery' ? missWords(record, hand) : carryWords(record, hand)) : ''
  return `${place}: ${note.kind} ${signedPins(-note.luckPins)}${why && `: ${why}`}.`
}

/** How far a throw crossed the arrows from its target, in boards from the bowler's own side; NaN where it did not. */
function arrowsMissBoards({ truth, decision }: ThrowRecord): number {
  const [before, after] = ARROWS_ROWS.map((row) => truth.path[row])
  return (metresToBoard(before) + metresToBoard(after)) / 2 - decision.aim.targetBoard
}

function missWords(record: ThrowRecord, hand: Hand): string {
  const boards = arrowsMissBoards(record)
  if (Math.abs(boards) >= LEAST_BOARDS) return `${boardsWords(boards)} ${sideOf(boards, hand)} of where you aimed`
  const [, , speed = 0, , turn = 0] = record.truth.normals
  if (Math.abs(speed) >= LEAST_MISS && Math.abs(speed) >= Math.abs(turn))
    return `on target; ${speed > 0 ? 'faster' : 'slower'} than your usual`
  if (Math.abs(turn) >= LEAST_MISS) return `on target; ${turn > 0 ? 'more' : 'less'} side turn than your usual`
  return 'on target; small things in the release'
}

function carryWords(record: ThrowRecord, hand: Hand): string {
  const fell = fellWords(record, hand).replace(/\.$/, '')
  const told = fell.charAt(0).toLowerCase() + fell.slice(1)
  if (record.standingBefore !== FULL_RACK) return told
  const { entryBoard, entryAngleRadians, leftLaneFeet } = record.truth
  if (Number.isFinite(leftLaneFeet)) return told
  const at = `${entryBoard.toFixed(1)} at ${radiansToDegrees(entryAngleRadians).toFixed(1)} deg`
  return `${contactWords(record.observation.contact, hand)} (${at}), ${told}`
}
