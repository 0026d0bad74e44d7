import { leaveName } from '../../../world/pins/leaves.js'
import type { SpareReading } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Candidate, pinsEvidence } from './tag.js'
import { alike, candidate, dearestOf, type TagContext, type Telling } from './tag-context.js'

/** Spare throws whose ball, or whose line, lost pins; those with one wrong ball, or at one leave, together. */
export function spareChoice(context: TagContext): Candidate[] {
  const faults = context.readings.filter(
    (reading): reading is SpareReading =>
      reading.kind === 'spare' && reading.shares !== null && reading.stands && reading.verdict.givenAwayPins > 0,
  )
  const groupOf = (reading: SpareReading): string =>
    isBall(reading) ? `${reading.decision.ballId} ${reading.decision.release}` : `line ${reading.standing}`
  return alike(faults, groupOf).map((throws) =>
    candidate(isBall(throws[0]) ? 'spare-ball' : 'spare-line', throws, lost, (told, pins) => tell(told, pins, context)),
  )
}

const isBall = ({ shares }: SpareReading): boolean => shares !== null && shares.ball > shares.line
const lost = ({ verdict }: SpareReading): number => verdict.lostPins

function tell(told: readonly SpareReading[], pins: number, { setup }: TagContext): Telling {
  const dearest = dearestOf(told, lost)
  const ball = isBall(dearest)
  const change = changeWords(dearest.decision, dearest.verdict.best, setup.bag, setup.bowler.hand)
  return {
    evidence: [
      pinsEvidence('lost by ball and release', sum(told, 'ball')),
      pinsEvidence('lost by the line', sum(told, 'line')),
    ],
    words: `${framesWords(told.map(({ spot }) => spot.frame))}, ${leaveName(dearest.standing)}: ${ball ? 'another ball or release was the surer one' : 'another line was the surer one'}: ${change}. About ${pinsWords(pins)}.`,
    practise: ball
      ? 'Shoot single pins with the straightest ball and release there is, from the far side of the lane; keep the hook for first balls.'
      : 'Write down for each single pin where to stand and what to look at, and check it in practice; the rest are moves from those.',
  }
}

function sum(told: readonly SpareReading[], part: 'ball' | 'line'): number {
  return told.reduce((pins, { shares }) => pins + (shares?.[part] ?? 0), 0)
}
