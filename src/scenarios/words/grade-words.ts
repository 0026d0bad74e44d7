import type { ContactChance, ExpectedReaction } from '../../sim/analysis/grade/contact-chances.js'
import type { GradeReason, PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import { radiansToDegrees } from '../../sim/units.js'
import type { BlockState, Contact, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../sim/world/pins/leaves.js'
import { changeWords } from './change-words.js'
import { breakpointPlace, contactWords, lineWords } from './throw-words.js'
import { costWords } from './words.js'

/** A grade in one line: what the choice cost, why, and what to try; `why` and `next` from the longest to the shortest. */
export interface GradeWords {
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
  if (lessonPins >= MOSTLY_LESSON * pins) return ['It tells less about the oil than another line.', 'It tells less.']
  if (!best) return []
  const [fault, more] = mainFault(choice, best)
  if (more < TELLING_SHARE) return [finerWords(choice, best)]
  const often = `${fault.words} ${tenths(fault.of(choice))}`
  const short = `${often.charAt(0).toUpperCase()}${often.slice(1)}.`
  if (!last) return [`Too much of it ends ${often}.`, short]
  const turned = breakpointPlace(last.observation)
  const seen = `${turned === '' ? '' : `${turned} and `}${contactWords(last.observation.contact, bowler.hand)}`
  const isSame = changeWords(last.decision, decision, bag, bowler.hand) === ''
  const again = fault.contacts.includes(last.observation.contact) ? `still ${often}` : often
  return [`${seen} before; ${isSame ? 'the same again is' : 'this is'} ${again}.`, `After ${seen}: ${again}.`, short].map(
    (words) => words.charAt(0).toUpperCase() + words.slice(1),
  )
}

interface Fault {
  readonly words: string
  readonly contacts: readonly Contact[]
  readonly of: (reaction: ExpectedReaction) => number
}

const fault = (words: string, contacts: readonly Contact[]): Fault => ({
  words,
  contacts,
  of: ({ contacts: chances }) => shareOf(chances, contacts),
})

const FAULTS: readonly Fault[] = [fault('light', LIGHT), fault('high', HIGH), fault('in the gutter', ['gutter'])]

/** What happens more often than with the best, and by how much. */
function mainFault(choice: ExpectedReaction, best: ExpectedReaction): readonly [Fault, number] {
  const excess = FAULTS.map((one) => [one, one.of(choice) - one.of(best)] as const)
  return excess.reduce((most, one) => (one[1] > most[1] ? one : most))
}

/** Where both come in alike: what the angle does, else what the misses do. */
function finerWords(choice: ExpectedReaction, best: ExpectedReaction): string {
  const [own, other] = [choice, best].map(({ pocketAngleRadians }) =>
    pocketAngleRadians === null ? null : radiansToDegrees(pocketAngleRadians),
  )
  if (own != null && other != null && Math.abs(other - own) >= TELLING_ANGLE_DEGREES)
    return `Into the pocket at ${own.toFixed(1)} deg; ${other.toFixed(1)} carries better.`
  return 'The pocket as often, but its misses cost more.'
}

const shareOf = (chances: readonly ContactChance[], contacts: readonly Contact[]): number =>
  chances.reduce((sum, { contact, chance }) => sum + (contacts.includes(contact) ? chance : 0), 0)

/** How often, as it is said. */
function tenths(share: number): string {
  const times = Math.round(share * 10)
  if (times <= 0) return 'now and then'
  return times === 1 ? 'once in 10' : `${times} times in 10`
}

const pocketWords = (reason: GradeReason | null): string =>
  reason ? `In the pocket ${tenths(shareOf(reason.choice.contacts, ['pocket']))}.` : ''

/** The best as the smallest change from the line thrown last, or from this one where none was. */
function nextWords(
  best: Decision,
  decision: Decision,
  last: ThrowRecord | undefined,
  { setup: { bag, bowler } }: BlockState,
): string[] {
  if (!last) return [`Try ${changeWords(decision, best, bag, bowler.hand)}.`]
  const change = changeWords(last.decision, best, bag, bowler.hand)
  const { phase, frame } = last.spot
  const line = phase === 'practice' ? 'the practice line' : `the line of frame ${frame}`
  if (change === '') return [`Try ${line} again.`]
  if (changeWords(last.decision, decision, bag, bowler.hand) === '') return [`Try ${change}.`]
  return [`Try ${change}, from ${line}.`, `Try ${lineWords(best, bag)}.`, `Try ${change}.`].sort(
    (a, b) => b.length - a.length,
  )
}

function spareWords(
  what: string,
  costs: boolean,
  { best }: PricedFairGrade,
  decision: Decision,
  { standing, setup: { bag, bowler } }: BlockState,
): GradeWords {
  if (!costs) return { what: `${what}.`, why: [], next: [''] }
  const isOtherBall = best.ballId !== decision.ballId || best.release !== decision.release
  const surer = isOtherBall ? lineWords(best, bag) : changeWords(decision, best, bag, bowler.hand)
  return {
    what: `${what}.`,
    why: [`Another ${isOtherBall ? 'way' : 'line'} is surer for the ${leaveName(standing)}.`, 'Another is surer.'],
    next: [`Try ${surer}.`],
  }
}

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
