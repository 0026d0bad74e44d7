import type { Call, Mode } from '../../scenarios/store/block-notes.js'
import {
  boardWords,
  CONTACT_WORDS,
  moveWords,
  observationWords,
  pinWords,
  SPEED_WORDS,
} from '../../scenarios/words/words.js'
import type { BlockSetup, Decision, Spot, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'

/** Everything that differs from an earlier decision, in words. */
export function changeWords(hand: Hand, from: Decision, to: Decision, ballName: (id: string) => string): string {
  const changes = [
    to.ballId === from.ballId ? '' : ballName(to.ballId),
    moveWords(from.aim, to.aim, hand),
    to.aim.speedStep === from.aim.speedStep ? '' : `speed ${SPEED_WORDS[to.aim.speedStep]}`,
    to.release === from.release ? '' : `${to.release} release`,
  ]
  return changes.filter(Boolean).join(', ')
}

/**
 * What the eye saw of a throw; on a pair of lanes also on which one, for the next throw is on the other. The lead-in
 * gives way where there is no room for it.
 */
export function seenWords(record: ThrowRecord, lanes: BlockSetup['lanes'], columns: number): string {
  const seen = observationWords(record.observation, record.standingBefore)
  const where = lanes.length === 2 ? [`Seen on ${lanes[record.spot.lane]!.name}: `] : []
  const lead = [...where, 'Seen: '].find((words) => words.length + seen.length <= columns) ?? ''
  return lead + seen
}

/** What a throw did to the pins. */
export const fellWords = ({ spot, standingBefore, standingAfter }: ThrowRecord): string =>
  pinWords(standingBefore, standingAfter, spot.ball)

/** A decision on one short line: what goes without saying is left out. */
export function choiceWords({ ballId, aim, release }: Decision, bag: BlockSetup['bag']): string {
  const ball = bag.find((one) => one.id === ballId)?.name ?? ballId
  const speed = aim.speedStep === 0 ? '' : `, ${SPEED_WORDS[aim.speedStep]}`
  const how = release === 'spare' ? ', spare release' : ''
  return `${ball}, feet ${boardWords(aim.feetBoard)}, target ${boardWords(aim.targetBoard)}${speed}${how}`
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

/** What a grade in play is held against: no player can do better than know what was shown. */
export const FAIR_WORDS = 'by what could be known'

export const MODE_WORDS: Readonly<Record<Mode, string>> = {
  drill: 'grades at once',
  block: 'grades at the end',
  test: 'grades in the debrief',
}

/** What was called before a throw. */
export const callWords = ({ contact, confidencePercent }: Call): string =>
  `${CONTACT_WORDS[contact]}, ${confidencePercent} % sure`

export function pinsGivenWords(pins: number): string {
  return `${pins.toFixed(1)} ${pins.toFixed(1) === '1.0' ? 'pin' : 'pins'}`
}
