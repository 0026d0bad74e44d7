import type { BeliefSummary, Reading } from '../../sim/analysis/belief/summary.js'

const SURE_SHARE = 0.995

/** How sure anyone could be of the fresh oil, in sentences. */
export function beliefSentences({ lengthFeet, volumeMillilitres, ratio, length, shape }: BeliefSummary): string[] {
  return [
    `The oil ends ${within(lengthFeet, toHalf, 'at')} ft, 80 % sure; ${likeliest([
      [length.short, 'short'],
      [length.medium, 'of medium length'],
      [length.long, 'long'],
    ])}.`,
    `Its volume is ${within(volumeMillilitres, toTenth)} mL.`,
    `The middle holds ${within(ratio, toTenth)} times as much as the outside; ${likeliest([
      [shape.flat, 'flat'],
      [shape.between, 'between flat and house-like'],
      [shape.houseLike, 'house-like'],
    ])}.`,
  ]
}

function likeliest(cases: readonly (readonly [share: number, words: string])[]): string {
  const [share, words] = cases.reduce((best, one) => (one[0] > best[0] ? one : best))
  return `it is ${share > SURE_SHARE ? 'surely' : `${Math.round(share * 100)} % likely to be`} ${words}`
}

/** The middle of a reading as it is said: its ends, or the one figure where both are told alike. */
function within({ low, high }: Reading, told: (value: number) => string, lead = ''): string {
  const [from, to] = [told(low), told(high)]
  return from === to ? `${lead} ${from}`.trimStart() : `between ${from} and ${to}`
}

const toTenth = (value: number): string => value.toFixed(1)
const toHalf = (feet: number): string => String(Math.round(feet * 2) / 2)
