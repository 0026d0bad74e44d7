import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Contact, Decision, Observation, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { countPins, FULL_RACK, leaveName, listPins, pinBit } from '../../sim/world/pins/leaves.js'
import { missedSide } from './missed-side.js'
import { entryWords } from './seen-entry.js'
import { boardWords, SPEED_WORDS, trimmed } from './words.js'

const HEADPIN = 1
const ARROWS_FEET = 15
const PINS_FEET = 60
const LANE_BOARDS = 39
/** From so many pins left on, what does not stand is told instead. */
const NEARLY_ALL = 9

/** How a ball met the rack, as it is called from the foul line; a miss by the side it went. */
export function contactWords(contact: Contact, hand: Hand): string {
  const [own, far] = hand === 'right' ? ['right', 'left'] : ['left', 'right']
  const words: Readonly<Record<Contact, string>> = {
    gutter: 'in the gutter',
    missed: `missed ${own}`,
    light: 'light',
    pocket: 'in the pocket',
    high: 'high',
    nose: 'on the nose',
    crossover: 'Brooklyn side',
    past: `missed ${far}`,
  }
  return words[contact]
}

/** The same in one or two words, for a column. */
export const shortContact = (contact: Contact, hand: Hand): string =>
  contactWords(contact, hand)
    .replace(/^(in|on) the /, '')
    .replace(' side', '')

/** What was decided, on one line; speed and release only where they are not the usual ones. */
export function lineWords({ ballId, aim, release }: Decision, bag: readonly BallSpecification[]): string {
  const ball = bag.find((one) => one.id === ballId)?.name ?? ballId
  const speed = aim.speedStep === 0 ? '' : `, ${SPEED_WORDS[aim.speedStep]}`
  const how = release === 'spare' ? ', spare release' : ''
  return `${ball}, slide ${boardWords(aim.feetBoard)}, target ${boardWords(aim.targetBoard)}${speed}${how}`
}

/** Where the ball turned; nothing is said of one that never went out or never came back. */
export function breakpointPlace({ breakpointBoard, breakpointFeet }: Observation): string {
  if (breakpointFeet < ARROWS_FEET || breakpointFeet >= PINS_FEET) return ''
  return `${trimmed(breakpointBoard)} at ${trimmed(breakpointFeet)} ft`
}

/** What the eye at the foul line caught of a throw, in the order a ball goes; the last parts give way for want of room. */
export function seenParts(record: ThrowRecord, hand: Hand): string[] {
  const { observation, standingBefore } = record
  const { arrowsBoard, contact, speedMph } = observation
  const isOnLane = arrowsBoard >= 1 && arrowsBoard <= LANE_BOARDS
  return [
    isOnLane ? `${trimmed(arrowsBoard)} at the arrows` : 'off the lane before the arrows',
    breakpointPlace(observation),
    standingBefore & pinBit(HEADPIN) || contact === 'gutter' ? contactWords(contact, hand) + enteringWords(record) : '',
    `${trimmed(speedMph)} mph`,
  ].filter((words) => words !== '')
}

function enteringWords(record: ThrowRecord): string {
  const entry = entryWords(record)
  return entry === '' ? '' : ` (${entry})`
}

/** What a throw did to the pins, told by what stands. */
export function fellWords(record: ThrowRecord, hand: Hand): string {
  const { spot, standingBefore, standingAfter } = record
  if (standingAfter === 0) {
    if (standingBefore !== FULL_RACK) return 'Spare.'
    return spot.ball === 1 ? 'Strike.' : 'All ten.'
  }
  const felled = countPins(standingBefore) - countPins(standingAfter)
  const side = felled === 0 && standingBefore !== FULL_RACK ? missedSide(record, hand) : null
  if (side) return `Missed the ${standsWords(standingAfter)} ${side}.`
  const pins = felled === 0 ? 'No pins' : felled === 1 ? '1 pin' : `${felled} pins`
  return `${pins}, leaving ${leavingWords(standingAfter)}.`
}

/** What stands, as a leave is named after "the". */
const standsWords = (standing: number): string => leaveName(standing)

function leavingWords(standing: number): string {
  if (standing === FULL_RACK) return 'all ten'
  if (countPins(standing) < NEARLY_ALL) {
    const name = leaveName(standing)
    if (/^\d+ pin$/.test(name)) return `the ${name.replace(' pin', '')}`
    return name.includes(' ') ? `the ${name}` : name
  }
  return `all but the ${listPins(FULL_RACK & ~standing).join('-')}`
}
