import type { Answer, Kind, Position, ReadQuestion, Skill } from '../../sim/analysis/practice/position.js'
import { idealAnswerOf, idealInterval, type PracticeLoss } from '../../sim/analysis/practice/scoring.js'
import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { lineWords } from './throw-words.js'
import { boardWords, moveWords, SPEED_WORDS } from './words.js'

/** Sentences of practice, the same on the screen and line by line. */

export const SKILL_WORDS: Readonly<Record<Skill, string>> = {
  line: 'line',
  ball: 'ball',
  'move-size': 'size of moves',
  timing: 'timing of moves',
  spare: 'spares',
  'throw-or-lane': 'throw or lane',
  read: 'reading the oil',
  call: 'calling the line',
}

const KIND_WORDS: Readonly<Record<Kind, string>> = {
  decide: 'Decide',
  read: 'Read the oil',
  call: 'Call the line',
  'throw-or-lane': 'Throw or lane?',
}

/** What kind of position it is, with its skill where the kind does not say it. */
export const headWords = (position: Position): string =>
  position.kind === 'decide' ? `${KIND_WORDS.decide}: ${SKILL_WORDS[position.skill]}` : KIND_WORDS[position.kind]

/** What stands before the oil, and what after it. */
const SHAPE_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  flat: ['flat oil', ''],
  between: ['oil', ' between flat and house-like'],
  houseLike: ['house-like oil', ''],
}

/** The oil of a family by its key, as the trade says it: `medium house-like oil`. */
export function familyWords(key: string): string {
  const [length = '', shape = ''] = key.split(' ')
  const [oil, after] = SHAPE_WORDS[shape] ?? [shape, '']
  return `${length} ${oil}${after}`
}

/** The three families of a question about shares, with where each begins. */
export const FAMILY_NAMES: Readonly<Record<'shape' | 'length', readonly [string, string, string]>> = {
  shape: ['flat (up to 4:1)', 'between (to 7:1)', 'house-like (above)'],
  length: ['short (up to 37 ft)', 'medium', 'long (from 42 ft)'],
}

export const READ_UNITS: Readonly<
  Record<Exclude<ReadQuestion, 'shape' | 'length'>, { readonly unit: string; readonly step: number }>
> = {
  lengthFeet: { unit: 'ft', step: 0.5 },
  volumeMillilitres: { unit: 'mL', step: 0.5 },
  ratio: { unit: ':1', step: 0.5 },
}

const READ_ASKS: Readonly<Record<ReadQuestion, string>> = {
  shape: 'What shape was the fresh oil? Spread 100 % over the three.',
  length: 'How long was the fresh oil? Spread 100 % over the three.',
  lengthFeet: 'Where did the fresh oil end? Give the range you would hold to four times in five.',
  volumeMillilitres: 'How much oil was laid? Give the range you would hold to four times in five.',
  ratio: 'Ratio of the fresh oil, middle to outside? Give the range you would hold to four times in five.',
}

const DECIDE_ASKS: Readonly<Record<Skill, string>> = {
  line: 'Which line next?',
  ball: 'Which ball next, and where?',
  'move-size': 'How far do you move?',
  timing: 'Stay or move?',
  spare: 'How do you shoot at it?',
  'throw-or-lane': 'You saw the last ball. What do you do about it?',
  read: '',
  call: '',
}

/** What is asked. */
export function askWords(position: Position, hand: Hand): string {
  switch (position.kind) {
    case 'decide':
      return DECIDE_ASKS[position.skill]
    case 'read':
      return READ_ASKS[position.question]
    case 'call':
      return 'Thrown as meant, on which board does this line enter? Give a range for four times in five.'
    case 'throw-or-lane': {
      const off = position.shownBoard - position.predictedBoard
      const side = off > 0 === (hand === 'right') ? 'left' : 'right'
      return `Expected to enter at ${position.predictedBoard.toFixed(1)}, it came in about ${Math.abs(off).toFixed(1)} boards to the ${side}. How much of that was the delivery?`
    }
  }
}

/** An offered answer: what changes against the line that stands, and where that is. */
export function offeredWords(
  decision: Decision,
  standing: Decision,
  bag: readonly BallSpecification[],
  hand: Hand,
  isSpare: boolean,
): string {
  if (isSpare || decision.ballId !== standing.ballId) return lineWords(decision, bag)
  const move = moveWords(standing.aim, decision.aim, hand)
  const speed = decision.aim.speedStep === standing.aim.speedStep ? '' : `, ${SPEED_WORDS[decision.aim.speedStep]}`
  const place = `slide ${boardWords(decision.aim.feetBoard)}, target ${boardWords(decision.aim.targetBoard)}`
  return `${move === 'same line' && speed === '' ? 'stay' : move}${speed} (${place})`
}

export const practicePins = (value: number): string =>
  `${value.toFixed(1)} ${value.toFixed(1) === '1.0' ? 'pin' : 'pins'}`

/** What an answer cost. */
export function costLine(position: Position, { pins: lost }: PracticeLoss): string {
  const isNothing = lost < 0.05
  if (position.kind === 'decide') return isNothing ? 'Good as the best.' : `Cost ${practicePins(lost)}.`
  if (isNothing) return 'As near as what you had seen allows.'
  return `Cost ${practicePins(lost)}; knowing nothing costs ${practicePins(position.stakesPins)} here.`
}

export const percentWords = (share: number): string => `${Math.round(100 * share)} %`

/** Why: what one who had seen the same would have answered, and what tells the answers apart. */
export function whyLine(
  position: Position,
  answer: Answer | null,
  told: { readonly bag: readonly BallSpecification[]; readonly hand: Hand; readonly standing: Decision },
): string {
  switch (position.kind) {
    case 'decide':
      return decideWhy(position, answer, told)
    case 'read': {
      if (position.question === 'shape' || position.question === 'length') {
        const names = FAMILY_NAMES[position.question].map((name) => name.replace(/ \(.*$/, ''))
        const said = (shares: readonly number[]): string =>
          names.map((name, i) => `${name} ${percentWords(shares[i] ?? 0)}`).join(', ')
        return `What could be read: ${said(position.ideal)}. Before the first ball: ${said(position.before)}.`
      }
      const { unit } = READ_UNITS[position.question]
      const range = (law: readonly number[]): string => rangeWords(...idealInterval(law), unit)
      return `What could be read: ${range(position.ideal)}. Before the first ball: ${range(position.before)}.`
    }
    case 'call': {
      const [low, high] = idealInterval(position.ideal)
      return `What could be told: board ${low.toFixed(1)} to ${high.toFixed(1)}, most likely about ${position.ideal[Math.floor(position.ideal.length / 2)]?.toFixed(1)}.`
    }
    case 'throw-or-lane': {
      const off = Math.abs(position.shownBoard - position.predictedBoard)
      const advice =
        position.ideal >= 0.5
          ? 'So much of a miss is no reason to move.'
          : 'Most of it was the lane, and that is a reason to move.'
      return `What could be told: delivery ${percentWords(position.ideal)}, about ${(off * position.ideal).toFixed(1)} of ${off.toFixed(1)} boards. ${advice}`
    }
  }
}

function decideWhy(
  position: Extract<Position, { kind: 'decide' }>,
  answer: Answer | null,
  {
    bag,
    hand,
    standing,
  }: { readonly bag: readonly BallSpecification[]; readonly hand: Hand; readonly standing: Decision },
): string {
  const ideal = idealAnswerOf(position)
  const best = ideal.kind === 'choice' ? position.answers[ideal.place] : undefined
  const chosen = answer?.kind === 'choice' ? position.answers[answer.place] : undefined
  const isSpare = position.skill === 'spare'
  const comes = (one: typeof best): string =>
    one?.contacts
      ? `comes in at ${one.entryBoard.toFixed(1)} (pocket ${percentWords(one.contacts.pocket)}, light ${percentWords(one.contacts.light)}, high ${percentWords(one.contacts.high)})`
      : ''
  if (!best) return ''
  const bestWords = offeredWords(best.decision, standing, bag, hand, isSpare)
  if (chosen && chosen.costPins === 0) return isSpare ? '' : `As meant it ${comes(chosen)}.`
  const yours = chosen?.contacts ? `Yours ${comes(chosen)}. ` : ''
  return `${yours}Best as seen: ${bestWords}${best.contacts ? `, ${comes(best)}` : ''}.`
}

const figure = (value: number): string => boardWords(Number(value.toFixed(1)))

/** A range as it is said: of a ratio each end with its "to one". */
const rangeWords = (low: number, high: number, unit: string): string =>
  unit === ':1' ? `${figure(low)}:1 to ${figure(high)}:1` : `${figure(low)} to ${figure(high)} ${unit}`.trimEnd()

/** What a player said, in words. */
export function saidWords(position: Position, answer: Answer): string {
  if (answer.kind === 'share') return `delivery ${percentWords(answer.share)}`
  if (answer.kind === 'interval') {
    const isRead = position.kind === 'read' && position.question !== 'shape' && position.question !== 'length'
    return rangeWords(answer.low, answer.high, isRead ? READ_UNITS[position.question].unit : '')
  }
  if (
    answer.kind === 'shares' &&
    position.kind === 'read' &&
    (position.question === 'shape' || position.question === 'length')
  )
    return FAMILY_NAMES[position.question]
      .map((name, i) => `${name.replace(/ \(.*$/, '')} ${percentWords(answer.shares[i] ?? 0)}`)
      .join(', ')
  return ''
}

/** The hint for the second position of a family. */
export const hintLine = (position: Position): string =>
  `Hint: ${hintWords(position).replace(/^./, (letter) => letter.toLowerCase())}`

/** What helps at a position without giving the answer away. */
export function hintWords(position: Position): string {
  switch (position.kind) {
    case 'decide': {
      const stands = position.standing === null ? undefined : position.answers[position.standing]
      if (!stands?.contacts) return 'A miss to one side costs more than to the other. Which?'
      const { entryBoard, contacts } = stands
      return `Your last line, as meant, comes in at about ${entryBoard.toFixed(1)} (pocket ${percentWords(contacts.pocket)}).`
    }
    case 'read':
      return 'Where the ball turned tells the length; how an inside and an outside ball differed tells the shape.'
    case 'call':
      return 'Leave out what the bowler missed by. Where did the balls over the target come in?'
    case 'throw-or-lane':
      return 'Was it on target at the arrows, and at its usual speed? Then the hand explains less.'
  }
}
