import { expect, it } from 'vitest'
import { beliefSentences } from '../../../src/scenarios/words/belief-words.js'
import type { BeliefSummary } from '../../../src/sim/analysis/belief/summary.js'

const belief: BeliefSummary = {
  lengthFeet: { low: 38.3, high: 42.2, mean: 40 },
  volumeMillilitres: { low: 22, high: 26, mean: 24 },
  ratio: { low: 3.02, high: 9, mean: 6 },
  length: { short: 0.1, medium: 0.8, long: 0.1 },
  shape: { flat: 0.001, between: 0.003, houseLike: 0.996 },
}

it('tells what could be read of the oil in plain sentences, lengths to the half foot', () => {
  expect(beliefSentences(belief)).toEqual([
    'The oil ends between 38.5 and 42 ft, 80 % sure; it is 80 % likely to be of medium length.',
    'Its volume is between 22.0 and 26.0 mL.',
    'The middle holds between 3.0 and 9.0 times as much as the outside; it is surely house-like.',
  ])
})

it('tells a figure once where both ends are told alike', () => {
  const narrow = { ...belief, lengthFeet: { low: 39.9, high: 40.1, mean: 40 } }
  expect(beliefSentences(narrow)[0]).toMatch(/^The oil ends at 40 ft, /)
})
