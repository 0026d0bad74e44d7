import { metresToBoard } from '../../sim/units.js'
import { contactBoards } from '../../sim/world/block/seen.js'
import type { Observation, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { CENTRE_BOARD, pinSpot } from '../../sim/world/lane/geometry.js'
import { listPins } from '../../sim/world/pins/leaves.js'

const ARROWS_FEET = 15
const HEADPIN_FEET = 60

/**
 * The board, from the bowler's own side, at which a ball was seen to cross the headpin's row: straight on from where it turned,
 * as far as that agrees with how it was called. A spare ball, which turns little, is told by it well.
 */
export function seenEndBoard({ arrowsBoard, breakpointBoard, breakpointFeet, contact }: Observation): number {
  if (contact === 'gutter') return breakpointBoard
  // One that never went out was furthest out before the arrows; from there on it came in.
  const slope = breakpointFeet === ARROWS_FEET ? 0 : (breakpointBoard - arrowsBoard) / (breakpointFeet - ARROWS_FEET)
  const straight = arrowsBoard + slope * (HEADPIN_FEET - ARROWS_FEET)
  const [from, to] = contactBoards(contact) ?? (contact === 'missed' ? [0, contactBoards('light')![0]] : [0, 40])
  return Math.min(to, Math.max(from, straight))
}

/**
 * To which side of the pins that stood a spare ball went by, from what was seen of it; null where that cannot be told.
 */
export function missedSide({ observation, standingBefore }: ThrowRecord, hand: Hand): 'left' | 'right' | null {
  const boards = listPins(standingBefore).map((pin) => {
    const fromRight = metresToBoard(pinSpot(pin).lateralMetres)
    return hand === 'right' ? fromRight : 2 * CENTRE_BOARD - fromRight
  })
  const end = seenEndBoard(observation)
  const isInside = end > Math.max(...boards)
  const isOutside = end < Math.min(...boards)
  if (isInside === isOutside) return null
  return isInside === (hand === 'right') ? 'left' : 'right'
}
