import type { ContactChance, ExpectedReaction } from '../../sim/analysis/grade/contact-chances.js'
import type { GradeReason, PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import { radiansToDegrees } from '../../sim/units.js'
import type { BlockState, Contact, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { countPins, FULL_RACK, leaveName } from '../../sim/world/pins/leaves.js'
import { ballName, changeWords, speedWords } from './change-words.js'
import { breakpointPlace, contactWords, lineWords } from './throw-words.js'
import { boardWords, capital, costWords } from './words.js'

/** A grade in one line: what the choice cost, why, and what to try; `why` and `next` from the longest to the shortest. */
interface GradeWords {
  readonly what: string
  readonly why: readonly string[]
  readonly next: readonly string[]
}

const LIGHT: readonly Contact[] = ['missed', 'light']
const HIGH: readonly Contact[] = ['high', 'nose', 'crossover', 'past']

/** Less than so much more often than with the best is no reason. */
const TELLING_SHARE = 0.06
const TELLING_ANGLE_DEGREES = 0.3
/** From this part of the cost on, the poorer lesson is the reason. */
const MOSTLY_LESSON = 0.5

/**
 * What is said of a choice before its result: from the grade and from what the player had seen on this lane, and from nothing else.
 *
 * @param before the block as it stood when the choice was made
 */
export function gradeWords(grade: PricedFairGrade, decision: Decision, before: BlockState): GradeWords {
  const costs = grade.givenAwayPins > 0
  const what = costWords(grade.givenAwayPins)
  if (before.standing !== FULL_RACK) return spareWords(what, costs, grade, decision, before)
  const last = lastFirstBall(before)
  if (!costs) return { what: `${what}.`, why: [pocketWords(grade.reason)], next: [''] }
  return {
    what: `${what}.`,
    why: grade.reason ? whyWords(grade.reason, grade.givenAwayPins, last, decision, before) : [],
    next: nextWords(grade.best, decision, last, before),
  }
}

/** The line in so many columns: of why and what next the longest that fit, the reason giving way first. */
export function gradeSentence({ what, why, next }: GradeWords, columns = Number.POSITIVE_INFINITY): string {
  for (const reason of [...why, ''])
    for (const advice of next) {
      const line = [what, reason, advice].filter((words) => words !== '').join(' ')
      if (line.length <= columns) return line
    }
  return what
}

/** The first ball thrown last on the lane of the coming throw. */
const lastFirstBall = ({ throws, spot }: BlockState): ThrowRecord | undefined =>
  throws.findLast((one) => one.spot.lane === spot?.lane && one.standingBefore === FULL_RACK)

function whyWords(
  { choice, best, lessonPins }: GradeReason,
  pins: number,
  last: ThrowRecord | undefined,
  decision: Decision,
  { setup: { bowler, bag } }: BlockState,
): string[] {
  if (lessonPins >= MOSTLY_LESSON * pins)
    return ['It tells less about the oil than another line.', 'Tells less about the oil.']
  if (!best) return []
  const [fault, more] = mainFault(choice, best)
  if (more < TELLING_SHARE) return [finerWords(choice, best)]
  const word = faultWords(fault, choice, bowler.hand)
  const share = shareOf(choice.contacts, fault.contacts)
  const often = share >= NEARLY_ALWAYS ? `nearly always ${word}` : `${word} ${tenths(share)}`
  const briefly = often.replace(' times', '')
  const short = [often, briefly].map((words) => `${capital(words)}.`)
  if (!last) return [`This line is ${often}.`, ...short]
  const turned = breakpointPlace(last.observation)
  const seen = capital(`${turned === '' ? '' : `${turned} and `}${contactWords(last.observation.contact, bowler.hand)}`)
  const isSame = changeWords(last.decision, decision, bag, bowler.hand) === ''
  const still = fault.contacts.includes(last.observation.contact) ? 'still ' : ''
  return [
    `${seen}: ${isSame ? 'the same again' : 'this'} is ${still}${often}.`,
    `${seen}: ${still}${often}.`,
    `${seen}: ${still}${briefly}.`,
    ...short,
  ]
}

interface Fault {
  readonly contacts: readonly Contact[]
  /** Said where most of it comes near the pocket, and where most goes by on that side. */
  readonly near: string
  readonly far: (hand: Hand) => string
}

const FAULTS: readonly Fault[] = [
  { contacts: LIGHT, near: 'light', far: (hand) => `too far ${hand === 'right' ? 'right' : 'left'}` },
  { contacts: HIGH, near: 'high', far: (hand) => `too far ${hand === 'right' ? 'left' : 'right'}` },
  { contacts: ['gutter'], near: 'in the gutter', far: () => 'in the gutter' },
]
const NEAR: readonly Contact[] = ['light', 'high', 'nose']

function faultWords({ contacts, near, far }: Fault, { contacts: chances }: ExpectedReaction, hand: Hand): string {
  const close = contacts.filter((one) => NEAR.includes(one))
  return 2 * shareOf(chances, close) >= shareOf(chances, contacts) ? near : far(hand)
}

/** What happens more often than with the best, and by how much. */
function mainFault(choice: ExpectedReaction, best: ExpectedReaction): readonly [Fault, number] {
  const excess = FAULTS.map(
    (one) => [one, shareOf(choice.contacts, one.contacts) - shareOf(best.contacts, one.contacts)] as const,
  )
  return excess.reduce((most, one) => (one[1] > most[1] ? one : most))
}

/** Where no one fault stands out: the pocket missed more often, else the angle, else what the misses do. */
function finerWords(choice: ExpectedReaction, best: ExpectedReaction): string {
  const [own, other] = [choice, best].map(({ contacts }) => shareOf(contacts, ['pocket']))
  if (other - own >= TELLING_SHARE) return `Hits the pocket ${tenths(own)}.`
  const [angle, better] = [choice, best].map(({ pocketAngleRadians }) => radiansToDegrees(pocketAngleRadians ?? 0))
  if (choice.pocketAngleRadians !== null && better - angle >= TELLING_ANGLE_DEGREES)
    return `Into the pocket at ${angle.toFixed(1)} deg; ${better.toFixed(1)} carries better.`
  return 'The pocket as often, but its misses cost more.'
}

const shareOf = (chances: readonly ContactChance[], contacts: readonly Contact[]): number =>
  chances.reduce((sum, { contact, chance }) => sum + (contacts.includes(contact) ? chance : 0), 0)

const NEARLY_ALWAYS = 0.95

/** How often, as it is said. */
function tenths(share: number): string {
  const times = Math.round(share * 10)
  if (times <= 0) return 'now and then'
  if (share >= NEARLY_ALWAYS) return 'nearly always'
  return times === 1 ? 'once in 10' : `${times} times in 10`
}

const pocketWords = (reason: GradeReason | null): string =>
  reason ? `Hits the pocket ${tenths(shareOf(reason.choice.contacts, ['pocket']))}.` : ''

/** A move of more boards than this is told by the line it leads to. */
const MOST_MOVE_BOARDS = 6

/** The best as the smallest change from the line thrown last, or from this one where none was; or as the line it is. */
function nextWords(
  best: Decision,
  decision: Decision,
  last: ThrowRecord | undefined,
  { setup: { bag, bowler } }: BlockState,
): string[] {
  const from = last?.decision ?? decision
  const change = changeWords(from, best, bag, bowler.hand)
  const isFar =
    Math.abs(best.aim.feetBoard - from.aim.feetBoard) > MOST_MOVE_BOARDS ||
    Math.abs(best.aim.targetBoard - from.aim.targetBoard) > MOST_MOVE_BOARDS
  const isOwnBall = best.ballId === decision.ballId && best.release === decision.release
  const speed = best.aim.speedStep === decision.aim.speedStep ? '' : `, ${speedWords(best.aim.speedStep)}`
  const whole = isOwnBall ? `Try ${onLine(best)}${speed}.` : `Try the ${lineWords(best, bag)}.`
  const ball = bag.findIndex(({ id }) => id === best.ballId) + 1
  const brief = `Try ${isOwnBall ? '' : `ball ${ball}, `}${onLine(best)}${speed}.`
  if (isFar) return [whole, brief]
  if (!last || changeWords(last.decision, decision, bag, bowler.hand) === '')
    return brief.length < `Try ${change}.`.length ? [`Try ${change}.`, brief] : [`Try ${change}.`]
  const { phase, frame } = last.spot
  const line = phase === 'practice' ? 'the practice line' : `the line of frame ${frame}`
  if (change === '') return [`Try ${line} again.`]
  return [`Try ${change}, from ${line}.`, whole, brief].sort((a, b) => b.length - a.length)
}

/** From so many pins on, a leave is not told by its pins. */
const MANY_PINS = 5

function spareWords(
  what: string,
  costs: boolean,
  { best }: PricedFairGrade,
  decision: Decision,
  { standing, setup: { bag, bowler } }: BlockState,
): GradeWords {
  if (!costs) return { what: `${what}.`, why: [], next: [''] }
  const leave = countPins(standing) >= MANY_PINS ? 'this leave' : `the ${leaveName(standing)}`
  const isOwnBall = best.ballId === decision.ballId && best.release === decision.release
  const isSameLine =
    changeWords({ ...decision, ballId: best.ballId, release: best.release }, best, bag, bowler.hand) === ''
  const ball = `the ${ballName(best.ballId, bag)}${best.release === decision.release ? '' : `, ${best.release} release`}`
  const surer = isOwnBall
    ? changeWords(decision, best, bag, bowler.hand)
    : `${ball}, ${isSameLine ? 'same line' : onLine(best)}`
  return {
    what: `${what}.`,
    why: [],
    next: [`Surer for ${leave}: ${surer}.`, `Surer: ${surer}.`, `Surer: ${isOwnBall ? surer : ball}.`],
  }
}

const onLine = ({ aim }: Decision): string =>
  `slide ${boardWords(aim.feetBoard)}, target ${boardWords(aim.targetBoard)}`

/** From this cost on, a line offered again is worth a warning. */
const COSTLY_LINE_PINS = 3

/**
 * A warning that the line about to be thrown has just cost much on this lane; empty where it has not.
 *
 * @param costOf what the throw of that number cost
 */
export function sameLineWarning(before: BlockState, decision: Decision, costOf: (index: number) => number): string {
  const last = lastFirstBall(before)
  if (!last || before.standing !== FULL_RACK || last.spot.phase !== 'game') return ''
  const pins = costOf(before.throws.indexOf(last))
  const { bag, bowler } = before.setup
  if (pins < COSTLY_LINE_PINS || changeWords(last.decision, decision, bag, bowler.hand) !== '') return ''
  return `This line just cost ${pins.toFixed(1)} pins.`
}
