import type { Evidence } from '../../sim/analysis/debrief/findings/tag.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { boardsWords, sideOf } from './change-words.js'
import { pinsWords } from './words.js'

const PINS_OF: Readonly<Partial<Record<Evidence['what'], string>>> = {
  'throw-cost': 'that throw cost',
  'ball-part': 'of that by the ball',
  'slide-part': 'of that by the slide',
  'target-part': 'of that by the target',
  'speed-part': 'of that by the speed',
  'line-part': 'of that by the line',
  'throws-cost': 'these throws cost',
  'staying-would-have-saved': 'staying would have saved',
  'staying-would-have-cost': 'staying would have cost',
  'lesson-lost': 'lost on later throws',
}

const SMALLEST_PINS = 0.05

/** Evidence without what comes to nothing or says a thing twice, where something else is left to stand on. */
export function tellingEvidence(evidence: readonly Evidence[]): readonly Evidence[] {
  const whole = evidence.find(({ what }) => what === 'throw-cost')?.value ?? 0
  // A part that is the whole says nothing more.
  const isWhole = ({ what, value }: Evidence): boolean => what.endsWith('-part') && whole - value < SMALLEST_PINS
  const something = evidence.filter((one) => one.unit !== 'pins' || (one.value >= SMALLEST_PINS && !isWhole(one)))
  return something.length > 0 ? something : evidence
}

/** A figure that a finding stands on, in words. */
export function evidenceWords({ what, value }: Evidence, hand: Hand): string {
  switch (what) {
    case 'throws-on-the-line':
      return `${value} throw${value === 1 ? '' : 's'} on the line after it stopped being good`
    case 'off-the-expected-entry':
      return `the ball before came in ${boardsWords(value)} ${value > 0 ? 'higher' : 'lighter'} than expected`
    case 'down-to-the-throw':
      return `${Math.round(value * 100)} % of that was the throw`
    case 'down-to-the-lane':
      return `${Math.round(value * 100)} % was the lane`
    case 'off-the-target':
      return Math.abs(value) < 0.5
        ? 'it crossed the arrows on target'
        : `it crossed the arrows ${boardsWords(value)} ${sideOf(value, hand)} of the target`
    case 'made-of-the-move':
      return value < 0
        ? 'the move went away from the one needed'
        : `the move was ${Math.round(value * 100)} % of the one needed`
    default:
      return `${PINS_OF[what]} ${pinsWords(value)}`
  }
}
