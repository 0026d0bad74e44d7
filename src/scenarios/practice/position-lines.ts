import { leaveName } from '../../sim/world/pins/leaves.js'
import { askWords, FAMILY_NAMES, offeredWords, READ_UNITS } from '../words/practice-words.js'
import { lineWords } from '../words/throw-words.js'
import type { OpenPosition } from './open-position.js'
import { evidenceHead, evidenceLines, standingOf } from './shown-lines.js'

/** What is looked at: whose lane, and what was seen on it. */
export function lookLines(open: OpenPosition): string[] {
  const { scenario, state, position } = open
  const { bag, lanes } = scenario.setup
  const posted = state.posted[state.spot!.lane]
  const sheet = posted
    ? `sheet ${posted.lengthFeet} ft${posted.volumeMillilitres === undefined ? '' : `, ${posted.volumeMillilitres} mL, ${posted.ratio}:1`}`
    : 'no sheet'
  return [
    `${scenario.title}, ${lanes[state.spot!.lane]!.name}, ${sheet}. Bowler: ${scenario.setup.bowler.name}, ${scenario.setup.bowler.hand}-handed.`,
    `First balls on this lane. ${evidenceHead(open, 'words')}`,
    ...evidenceLines(open, 'words').map((line) => `  ${line}`),
    ...(position.kind === 'decide' && position.skill === 'spare' ? [`Spare: ${leaveName(state.standing)}.`] : []),
    ...(position.kind === 'call' ? [`The line: ${lineWords(position.decision, bag)}.`] : []),
  ]
}

/** What is asked, and how it is answered line by line. */
export function questionLines(open: OpenPosition): string[] {
  const { position, scenario } = open
  const { bag, bowler } = scenario.setup
  const ask = askWords(position, bowler.hand)
  if (position.kind === 'decide') {
    const standing = standingOf(open)
    return [
      ask,
      ...position.answers.map(
        ({ decision }, at) =>
          `  ${at + 1}  ${offeredWords(decision, standing, bag, bowler.hand, position.skill === 'spare')}`,
      ),
      'Say a number and, if you like, how sure you are that it is sound: 3 80.',
    ]
  }
  if (position.kind === 'throw-or-lane') return [ask, 'Say the delivery in per cent, 0 to 100.']
  if (position.kind === 'call') return [ask, 'Say two boards, such as 16.5 18.']
  if (position.question === 'shape' || position.question === 'length')
    return [ask, `Say three shares for ${FAMILY_NAMES[position.question].join(', ')}: such as 20 50 30.`]
  return [ask, `Say two figures in ${READ_UNITS[position.question].unit}, such as 38 41.`]
}
