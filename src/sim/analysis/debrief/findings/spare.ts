import { leaveName } from '../../../world/pins/leaves.js'
import type { SpareReading } from '../reading/reading.js'
import { changeWords, framesWords, pinsWords } from './choice-words.js'
import { type Claim, pinsEvidence } from './tag.js'
import { type Family, framesOf, type TagContext, type Told } from './tag-context.js'

/** Spare throws whose ball, or whose line, lost pins; those with one wrong ball, or at one leave, together. */
export const spareChoice: Family = { claims, tell }

function claims({ readings }: TagContext): Claim[] {
  return readings
    .filter((reading): reading is SpareReading => reading.kind === 'spare' && reading.shares !== null)
    .flatMap((reading): Claim[] => [
      {
        kind: 'spare-ball',
        reading,
        group: `spare ball ${reading.decision.ballId} ${reading.decision.release}`,
        explains: { ball: 1 },
      },
      { kind: 'spare-line', reading, group: `spare line ${reading.standing}`, explains: { line: 1 } },
    ])
}

function tell({ told, dearest, pins }: Told, { setup }: TagContext) {
  const { reading, kind } = dearest.claim
  const isBall = kind === 'spare-ball'
  const standing = reading.kind === 'spare' ? reading.standing : 0
  const change = changeWords(reading.decision, reading.verdict.best, setup.bag, setup.bowler.hand)
  return {
    evidence: [
      pinsEvidence('that throw cost', reading.verdict.givenAwayPins),
      pinsEvidence(isBall ? 'of that by ball and release' : 'of that by the line', dearest.pins),
    ],
    words: `${framesWords(framesOf(told))}, ${leaveName(standing)}: ${isBall ? 'another ball or release was the surer one' : 'another line was the surer one'}: ${change}. About ${pinsWords(pins)}.`,
    practise: isBall
      ? 'Shoot single pins with the straightest ball and release there is, from the far side of the lane; keep the hook for first balls.'
      : 'Write down for each single pin where to stand and what to look at, and check it in practice; the rest are moves from those.',
  }
}
