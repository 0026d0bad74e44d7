import type { Answer, Position } from './position.js'

/** An interval is asked for with this much left out on either side: the middle four fifths. */
const INTERVAL_TAIL = 0.1
const ALPHA = 2 * INTERVAL_TAIL
/** A loss up to this is a sound answer (design, no source). */
export const SOUND_PINS = 0.5
/** Entry boards between which a call that knows nothing lies: from light to nose. */
const ANY_ENTRY: readonly [number, number] = [13.73, 20.5]
/** Where nothing is known the ideal observer knows little more: its lead is never taken for less than this. */
const LEAST_SHARES_LEAD = 0.05
const LEAST_SHARE_LEAD = 0.02
const LEAST_INTERVAL_LEAD = 0.3
/** However far off an answer is, it is not taken to cost more than so many times what knowing nothing does. */
const MOST_BLIND_COSTS = 3

/**
 * Luck-free part of the Brier score of stated shares: the sum of (q - p*)^2. For any shares the expected score over what may
 * be is this plus what the ideal observer's own shares score (Brier 1950; the split is elementary).
 */
export function sharesRegret(stated: readonly number[], ideal: readonly number[]): number {
  return ideal.reduce((sum, share, i) => sum + (stated[i] - share) * (stated[i] - share), 0)
}

/**
 * Expected interval score over equally likely values: width, and 2/alpha for every unit by which a value lies outside (Winkler 1972;
 * Gneiting and Raftery 2007, from memory). Least at the alpha/2 and 1 - alpha/2 quantiles of the law.
 */
export function intervalScore(low: number, high: number, law: readonly number[]): number {
  let outside = 0
  for (const value of law) outside += Math.max(0, low - value) + Math.max(0, value - high)
  return high - low + ((2 / ALPHA) * outside) / law.length
}

/** The interval an ideal observer with this law states. */
export function idealInterval(law: readonly number[]): readonly [low: number, high: number] {
  const sorted = [...law].sort((a, b) => a - b)
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))]
  return [at(INTERVAL_TAIL), at(1 - INTERVAL_TAIL)]
}

export function intervalRegret(low: number, high: number, law: readonly number[]): number {
  const [idealLow, idealHigh] = idealInterval(law)
  return intervalScore(low, high, law) - intervalScore(idealLow, idealHigh, law)
}

/** What an answer lost against the ideal observer's. */
export interface PracticeLoss {
  /**
   * In pins: the price of a decision; of any other answer what hangs on it, in the share that its score lost against the ideal
   * observer's of what an answer that knows nothing loses (design, no source).
   */
  readonly pins: number
  /** What answering without a clue loses there, on average. */
  readonly blindPins: number
  readonly isSound: boolean
}

/** Scores an answer. @throws RangeError when the answer is not of the position's kind */
export function lossOf(position: Position, answer: Answer): PracticeLoss {
  const pins = lostPins(position, answer)
  return { pins, blindPins: blindPinsOf(position), isSound: pins <= SOUND_PINS }
}

/** What answering without a clue loses: the mean over the answers offered, else all that hangs on it. */
export function blindPinsOf(position: Position): number {
  if (position.kind !== 'decide') return position.stakesPins
  return position.answers.reduce((sum, { costPins }) => sum + costPins, 0) / position.answers.length
}

function lostPins(position: Position, answer: Answer): number {
  switch (position.kind) {
    case 'decide': {
      const chosen = answer.kind === 'choice' ? position.answers[answer.place] : undefined
      if (!chosen) throw new RangeError('This position is answered by one of the choices offered.')
      return chosen.costPins
    }
    case 'read': {
      if (position.question === 'shape' || position.question === 'length') {
        if (answer.kind !== 'shares') throw new RangeError('This position is answered by shares of three families.')
        const lead = Math.max(LEAST_SHARES_LEAD, sharesRegret([1 / 3, 1 / 3, 1 / 3], position.ideal))
        return pinsOf(position.stakesPins, sharesRegret(answer.shares, position.ideal), lead)
      }
      return intervalPins(position.stakesPins, answer, position.ideal, idealInterval(position.before))
    }
    case 'call':
      return intervalPins(position.stakesPins, answer, position.ideal, ANY_ENTRY)
    case 'throw-or-lane': {
      if (answer.kind !== 'share') throw new RangeError('This position is answered by one share.')
      const regret = (share: number): number => (share - position.ideal) * (share - position.ideal)
      return pinsOf(position.stakesPins, regret(answer.share), Math.max(LEAST_SHARE_LEAD, regret(0.5)))
    }
  }
}

function intervalPins(
  stakesPins: number,
  answer: Answer,
  law: readonly number[],
  [low, high]: readonly [number, number],
): number {
  if (answer.kind !== 'interval') throw new RangeError('This position is answered by an interval.')
  const lead = Math.max(LEAST_INTERVAL_LEAD, intervalRegret(low, high, law))
  return pinsOf(stakesPins, intervalRegret(answer.low, answer.high, law), lead)
}

/** A regret as pins. Pins rise with it up to a bound, so that the ideal observer's answer stays the best one. @param lead regret of knowing nothing */
const pinsOf = (stakesPins: number, regret: number, lead: number): number =>
  stakesPins * Math.min(MOST_BLIND_COSTS, Math.max(0, regret) / lead)

/** How much more an answer that knows nothing loses than the ideal observer's, in the score's own unit: how much there is to know. */
export function leadOf(position: Position): number {
  switch (position.kind) {
    case 'decide':
      return blindPinsOf(position)
    case 'read':
      return position.question === 'shape' || position.question === 'length'
        ? sharesRegret([1 / 3, 1 / 3, 1 / 3], position.ideal)
        : intervalRegret(...idealInterval(position.before), position.ideal)
    case 'call':
      return intervalRegret(...ANY_ENTRY, position.ideal)
    case 'throw-or-lane':
      return (position.ideal - 0.5) * (position.ideal - 0.5)
  }
}

/** What the ideal observer answers. */
export function idealAnswerOf(position: Position): Answer {
  switch (position.kind) {
    case 'decide':
      return {
        kind: 'choice',
        place: bestPlace(
          position.answers.map(({ costPins }) => costPins),
          position.standing,
        ),
      }
    case 'read':
      if (position.question === 'shape' || position.question === 'length')
        return { kind: 'shares', shares: position.ideal }
      return intervalOf(position.ideal)
    case 'call':
      return intervalOf(position.ideal)
    case 'throw-or-lane':
      return { kind: 'share', share: position.ideal }
  }
}

const intervalOf = (law: readonly number[]): Answer => {
  const [low, high] = idealInterval(law)
  return { kind: 'interval', low, high }
}

/** Of answers that cost nothing the one that changes nothing, else the first. */
function bestPlace(costs: readonly number[], standing: number | null): number {
  if (standing !== null && costs[standing] === 0) return standing
  return costs.indexOf(Math.min(...costs))
}

/** Score of how sure somebody said to be that an answer is sound: (q - s)^2 with s 1 or 0 (Brier 1950). */
export function sureScore(sureShare: number, isSound: boolean): number {
  const miss = sureShare - (isSound ? 1 : 0)
  return miss * miss
}
