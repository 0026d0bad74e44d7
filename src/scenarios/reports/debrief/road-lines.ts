import { isSame } from '../../../sim/analysis/debrief/ledger/throw-worths.js'
import type { Alternative } from '../../../sim/analysis/debrief/reading/alternatives.js'
import type { BlockSetup, ThrowRecord } from '../../../sim/world/block/types.js'
import { shortDecision, signedPins } from '../../words/words.js'
import type { DebriefedThrow } from './debrief.js'

/** Throws whose other choices are told, and how many of them. */
const TOLD_THROWS = 3
const TOLD_CHOICES = 4

export const OTHER_CHOICE_WORDS: Readonly<Record<Alternative['what'], string>> = {
  move: 'a small move',
  best: 'the nearest as good as the best',
  'best-line-of-ball': 'the best line of that ball',
}

/** The frame, and the ball of it where that is not its first. */
const placeOf = ({ spot: { game, frame, ball } }: ThrowRecord): string =>
  `frame ${game}-${frame}${ball > 1 ? `, ball ${ball}` : ''}`

export interface OtherChoices {
  readonly thrown: ThrowRecord
  /** The best of them from what had been shown. */
  readonly others: readonly Alternative[]
}

/** The throws that cost most, each with the best of what else could have been thrown. */
export function dearestWithOtherChoices(throws: readonly DebriefedThrow[]): OtherChoices[] {
  return throws
    .filter(
      ({ account, fair }) => fair !== null && fair.givenAwayPins > 0 && (account.graded?.alternatives.length ?? 0) > 0,
    )
    .sort((a, b) => (b.fair?.givenAwayPins ?? 0) - (a.fair?.givenAwayPins ?? 0))
    .slice(0, TOLD_THROWS)
    .map(({ record, account }) => ({ thrown: record, others: best(account.graded?.alternatives ?? []) }))
}

/** The road not taken, at the throws that cost most: other balls on their best lines and small moves of the same ball. */
export function roadLines(throws: readonly DebriefedThrow[], bag: BlockSetup['bag']): string[] {
  const dearest = dearestWithOtherChoices(throws)
  if (dearest.length === 0) return []
  return [
    '',
    'Other choices, where most was lost; pins gained: from what you had seen / on the real oil',
    ...dearest.flatMap(({ thrown, others }) => [
      `  ${placeOf(thrown)}, thrown ${shortDecision(thrown.decision, bag)}`,
      ...others.map(
        ({ what, decision, fairGainPins, knownGainPins }) =>
          `    ${shortDecision(decision, bag).padEnd(18)}${signedPins(fairGainPins).padStart(5)} / ${signedPins(knownGainPins).padStart(5)}  ${OTHER_CHOICE_WORDS[what]}`,
      ),
    ]),
  ]
}

/** The best few, each line once; what is the best of all is told as that. */
function best(alternatives: readonly Alternative[]): Alternative[] {
  const sorted = [...alternatives].sort(
    (a, b) => b.fairGainPins - a.fairGainPins || Number(b.what === 'best') - Number(a.what === 'best'),
  )
  const isFirst = ({ decision }: Alternative, place: number): boolean =>
    sorted.findIndex((other) => isSame(other.decision, decision)) === place
  return sorted.filter(isFirst).slice(0, TOLD_CHOICES)
}
