import type { Answer } from '../../sim/analysis/practice/position.js'
import { idealAnswerOf, type PracticeLoss } from '../../sim/analysis/practice/scoring.js'
import { SIGHT_MARKS_FEET, type SightMark, seenMarks } from '../../sim/analysis/practice/vanishing.js'
import { metresToFeet } from '../../sim/units.js'
import type { Decision, ThrowRecord } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { measurePattern } from '../../sim/world/lane/pattern.js'
import { costLine, whyLine } from '../words/practice-words.js'
import { breakpointPlace, fellWords, seenParts, shortContact } from '../words/throw-words.js'
import { boardWords, shortDecision } from '../words/words.js'
import { evidenceOf, lastAsMeant, type OpenPosition, standingLine, thrownAt } from './open-position.js'

/** Where the last ball of a position vanishes; null where it does not. */
export const vanishesAt = ({ position }: OpenPosition): SightMark | null =>
  position.kind === 'read' ? (position.vanishesFeet as SightMark | null) : null

/** How much room a line of evidence has: all in words, the figures alone under a heading that says what they are, or those without the speed. */
export type EvidenceLook = 'words' | 'figures' | 'tight'

/** One thrown ball of the evidence on one line; of one that vanished only what was seen before. */
function evidenceWords(open: OpenPosition, record: ThrowRecord, isLast: boolean, look: EvidenceLook): string {
  const { bag, bowler } = open.scenario.setup
  const line = shortDecision(record.decision, bag)
  const vanishes = isLast ? vanishesAt(open) : null
  if (vanishes === null)
    return `${line}: ${look === 'words' ? inWords(record, bowler.hand) : inFigures(record, bowler.hand, look)}`
  const marks = seenMarks(record, vanishes)
  const said = marks.map(
    (board, mark) => `${boardWords(board)} at ${mark === 0 ? 'the arrows' : `${SIGHT_MARKS_FEET[mark]} ft`}`,
  )
  return `${line}: ${said.join(', ')}, then out of sight`
}

/** What was seen of a throw without what no question needs. */
const inWords = (record: ThrowRecord, hand: Hand): string =>
  seenParts(record, hand)
    .map((part) => part.replace(/ \(.*\)$/, '').replace(' at the arrows', ''))
    .join(', ')

function inFigures(record: ThrowRecord, hand: Hand, look: EvidenceLook): string {
  const { arrowsBoard, contact, speedMph } = record.observation
  const breakpoint = breakpointPlace(record.observation).replace(' ft', '')
  const speed = look === 'tight' ? '' : speedMph.toFixed(1)
  return [boardWords(arrowsBoard), breakpoint, shortContact(contact, hand), speed].filter(Boolean).join(', ')
}

const UNITS: Readonly<Record<EvidenceLook, string>> = {
  words: 'arrows, breakpoint, contact, speed',
  figures: 'arrows, breakpoint at ft, contact, mph',
  tight: 'arrows, breakpoint at ft, contact',
}

/** How the evidence is to be read, with the names of the balls in it. */
export function evidenceHead(open: OpenPosition, look: EvidenceLook): string {
  const { bag } = open.scenario.setup
  const used = bag.flatMap(({ id, name }, place) =>
    evidenceOf(open).some(({ decision }) => decision.ballId === id) ? [`${place + 1} ${name}`] : [],
  )
  const units = UNITS[look]
  return `Ball slide/target: ${units}. ${used.length > 1 ? 'Balls' : 'Ball'} ${used.join(', ')}.`
}

/** All the evidence, oldest first. */
export function evidenceLines(open: OpenPosition, look: EvidenceLook): string[] {
  const all = evidenceOf(open)
  return all.map((record, place) => evidenceWords(open, record, place === all.length - 1, look))
}

/** The line that stands: the one thrown last. */
export function standingOf(open: OpenPosition): Decision {
  const { position } = open
  if (position.kind === 'decide' && position.standing !== null) return position.answers[position.standing]!.decision
  return standingLine(open)
}

/** What came of an answer under the block's own luck, or how it really was. */
function resultLine(open: OpenPosition, answer: Answer | null): string {
  const { position, begun, state, scenario } = open
  const { hand } = scenario.setup.bowler
  switch (position.kind) {
    case 'decide': {
      const ideal = idealAnswerOf(position)
      const said = answer ?? ideal
      if (said.kind !== 'choice') return ''
      const record = thrownAt(open, position.answers[said.place]!.decision)
      return `${answer ? 'Thrown' : 'Thrown so'}: ${seenParts(record, hand).join(', ')}. ${fellWords(record, hand)}`
    }
    case 'read': {
      const { lengthMetres, volumeMicrolitres, ratio } = measurePattern(begun.lanes[state.spot!.lane]!.film)
      return `The oil as laid: ${boardWords(Math.round(2 * metresToFeet(lengthMetres)) / 2)} ft, ${(volumeMicrolitres / 1000).toFixed(1)} mL, ${ratio.toFixed(1)}:1.`
    }
    case 'call': {
      const record = thrownAt(open, position.decision)
      return `On the real oil it enters at ${position.truth.toFixed(1)} as meant. Thrown, with its miss: ${seenParts(record, hand).join(', ')}.`
    }
    case 'throw-or-lane': {
      const last = evidenceOf(open).at(-1)!
      return `In truth: as meant it would have come in at ${lastAsMeant(open).toFixed(1)} on that oil; it came in at ${last.truth.entryBoard.toFixed(1)}.`
    }
  }
}

/** Cost, why and result, a line each; what is empty is left out. */
export function toldLines(open: OpenPosition, answer: Answer | null, loss: PracticeLoss | null): string[] {
  const { bag, bowler } = open.scenario.setup
  const why = whyLine(open.position, answer, { bag, hand: bowler.hand, standing: standingOf(open) })
  return [loss ? costLine(open.position, loss) : '', why, resultLine(open, answer)].filter((line) => line !== '')
}
