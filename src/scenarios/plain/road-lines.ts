import type { Alternative } from '../../sim/account/alternatives.js'
import type { BlockSetup } from '../../sim/block/types.js'
import type { DebriefedThrow } from '../debrief.js'
import { shortDecision } from './words.js'

/** Throws whose other choices are told, and how many of them. */
const TOLD_THROWS = 3
const TOLD_CHOICES = 4

/** The road not taken, at the throws that gave most away: other balls on their best lines and small moves of the same ball. */
export function roadLines(throws: readonly DebriefedThrow[], bag: BlockSetup['bag']): string[] {
  const dearest = throws
    .filter(
      ({ account, fair }) => fair !== null && fair.givenAwayPins > 0 && (account.graded?.alternatives.length ?? 0) > 0,
    )
    .sort((a, b) => (b.fair?.givenAwayPins ?? 0) - (a.fair?.givenAwayPins ?? 0))
    .slice(0, TOLD_THROWS)
  if (dearest.length === 0) return []
  return [
    '',
    'The road not taken: what else could have been thrown, gained by what could be known / on the oil as it was',
    ...dearest.flatMap(({ record, account }) => [
      `  frame ${record.spot.game}-${record.spot.frame}, thrown ${shortDecision(record.decision, bag)}`,
      ...best(account.graded?.alternatives ?? []).map(
        ({ what, decision, fairGainPins, knownGainPins }) =>
          `    ${shortDecision(decision, bag).padEnd(18)}${signed(fairGainPins)} / ${signed(knownGainPins)}  ${what === 'move' ? 'a small move' : 'the best line of that ball'}`,
      ),
    ]),
  ]
}

function best(alternatives: readonly Alternative[]): Alternative[] {
  return [...alternatives].sort((a, b) => b.fairGainPins - a.fairGainPins).slice(0, TOLD_CHOICES)
}

const signed = (pins: number): string => `${pins < 0 ? '-' : '+'}${Math.abs(pins).toFixed(1)}`.padStart(5)
