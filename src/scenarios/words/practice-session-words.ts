import type { Answered, Calibration } from '../../sim/analysis/practice/learner.js'
import type { SessionEnd, SessionPlan } from '../../sim/analysis/practice/session.js'
import { SHORT_BLOCK_FRAMES } from '../../sim/analysis/practice/short-block.js'
import { familyWords, percentWords, practicePins, SKILL_WORDS } from './practice-words.js'
import { capital } from './words.js'

/** Sentences about a session of practice as a whole. */

/** What is said of ready positions that an earlier program made; empty where they are of today's. */
export const STANDING_LINES = {
  today: '',
  'earlier-grades':
    'The ready positions were priced by an earlier version of the grades; a drill or a block may price them a little otherwise.',
  'earlier-model': 'The ready positions are of an earlier model: each is asked anew, which takes some seconds.',
} as const

/** The plan, said at the start. */
export function planLine({ minutes, families, comeBack, practice, test, hasShortBlock }: SessionPlan): string {
  const told = families.map(familyWords)
  const two = told.length > 1 ? `two families that look alike, ${told.join(' and ')}` : (told[0] ?? 'all there are')
  const back = comeBack.length > 0 ? `, a look back at ${comeBack.map(familyWords).join(' and ')}` : ''
  const end = hasShortBlock
    ? `then a short block without grades, ${SHORT_BLOCK_FRAMES} frames on fresh oil of the same kind`
    : `and a short test of ${test} without grades`
  return `${minutes} minutes, about ${practice + test} positions: ${two}${back}, ${end}.`
}

/** What the short block at the end is. @param family of the oil it is bowled on */
export const shortBlockWords = (family: string): string =>
  `Did it stick? A short block on fresh ${familyWords(family)}: ${SHORT_BLOCK_FRAMES} frames after the practice throws, no grades until it is over.`

/** What it cost, once it is over. @param costs of its choices, pins */
export function shortBlockLine(costs: readonly number[]): string {
  const all = costs.reduce((sum, cost) => sum + cost, 0)
  const perGame = (10 * all) / SHORT_BLOCK_FRAMES
  return `Short block: ${costs.length} choices cost ${practicePins(all)}, ${practicePins(perGame)} a game. Progress keeps this beside the others.`
}

const dayWords = (days: number): string => (days <= 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`)

/** The three lines at the end: what moved, what costs most, what comes back when. */
export function endLines({ moved, dearest, back, test }: SessionEnd): readonly string[] {
  const movedLine = moved
    ? `${capital(SKILL_WORDS[moved.skill])}: from ${moved.from.toFixed(1)} to ${practicePins(moved.to)} a game${moved.sure ? '.' : '; too few answers yet to call it a change.'}`
    : 'What moved shows from the second session on.'
  const dearestLine = dearest
    ? `Costs most: ${SKILL_WORDS[dearest.skill]}, ${practicePins(dearest.pinsAGame)} a game (${dearest.low.toFixed(1)} to ${dearest.high.toFixed(1)} in four cases of five).`
    : 'Nothing was answered.'
  const backLine = back
    ? `Comes back: ${familyWords(back.family)} ${dayWords(back.days)} (after 1, 3, 7 and 21 days, as long as it goes well).`
    : 'Nothing comes back yet.'
  const tested = test ? [`Test: ${test.sound} of ${test.positions} sound, cost ${practicePins(test.pins)} in all.`] : []
  return [...tested, movedLine, dearestLine, backLine]
}

/** How far practice on a screen goes. */
export const CARRY_OVER_LINE =
  'On your own lanes expect well under half of what you gain here (pooled trials of such training: 1.5 standard deviations on screen, 0.65 in the game).'

/** Answers that were sure and wrong, dearest first: the ones that teach most. */
export function sureAndWrong(answered: readonly Answered[]): readonly Answered[] {
  return answered
    .filter(({ sureShare, isSound }) => (sureShare ?? 0) >= 0.8 && !isSound)
    .sort((a, b) => b.pins - a.pins)
}

/** How confidence held, once there is enough of it; empty before. */
export function calibrationLine(curve: readonly Calibration[] | null): string {
  if (!curve) return ''
  const told = curve.map(
    ({ sureShare, answers, soundShare }) => `${percentWords(sureShare)}: ${percentWords(soundShare)} of ${answers}`,
  )
  return `How sure you said to be, and how often it held: ${told.join('; ')}.`
}
