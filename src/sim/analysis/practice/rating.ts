import { exponential, naturalLogarithm } from '../../exact-math.js'
import { DIFFICULTY_WEIGHTS } from './difficulty-weights.js'
import { type Position, SKILLS, type Skill } from './position.js'
import { blindPinsOf, SOUND_PINS } from './scoring.js'
import { isStandingBest } from './select-positions.js'

/**
 * What makes a position hard, as figures: whether it is of each skill, then for decisions the share of sound answers among those offered,
 * how dear a blind answer is, and whether changing nothing is best; for the others what hangs on the answer and how far the ideal answer is from
 * one that knows nothing.
 */
export function featuresOf(position: Position): number[] {
  const ofSkill = SKILLS.map((skill) => (position.skill === skill ? 1 : 0))
  const logStakes = naturalLogarithm(1 + blindPinsOf(position))
  if (position.kind === 'decide') {
    const { answers } = position
    const sound = answers.filter(({ costPins }) => costPins <= SOUND_PINS).length / answers.length
    return [...ofSkill, sound, logStakes, isStandingBest(position) ? 1 : 0, 0, 0]
  }
  const share = position.kind === 'throw-or-lane' ? Math.abs(position.ideal - 0.5) : 0
  return [...ofSkill, 0, 0, 0, logStakes, share]
}
export const FEATURES = SKILLS.length + 5

/** How hard a position is, on the scale of a learner's rating; linear in its features, as a new position has no history. */
export const difficultyBy = (features: readonly number[], weights: readonly number[]): number =>
  features.reduce((sum, feature, i) => sum + feature * weights[i], 0)

const worked = new WeakMap<Position, number>()

/** The same by the weights that come with the program, worked out once. */
export function difficultyOf(position: Position): number {
  const known = worked.get(position) ?? difficultyBy(featuresOf(position), DIFFICULTY_WEIGHTS)
  worked.set(position, known)
  return known
}

/** Chance of a sound answer (linear logistic test model: Fischer 1973, from memory). */
export const soundChance = (rating: number, difficulty: number): number => 1 / (1 + exponential(difficulty - rating))

/** A learner's rating in each skill, with how often it was updated. */
export type Ratings = Readonly<Record<Skill, { readonly rating: number; readonly count: number }>>

/** A learner of whom nothing is known is sound as often as the scripted players that difficulties were fitted on. */
export const FIRST_RATINGS: Ratings = Object.fromEntries(
  SKILLS.map((skill) => [skill, { rating: 0, count: 0 }]),
) as unknown as Ratings

/** How much of a surprise an update takes in: less with every answer (Elo form after Pelanek 2016, Computers & Education; constants from memory). */
const uncertaintyOf = (count: number): number => 1 / (1 + 0.05 * count)
/** An answer in one skill tells a little of all. */
const SPILL = 0.25

/** Ratings after one more answer. */
export function rated(ratings: Ratings, skill: Skill, difficulty: number, isSound: boolean): Ratings {
  const surprise = (isSound ? 1 : 0) - soundChance(ratings[skill].rating, difficulty)
  return Object.fromEntries(
    SKILLS.map((one) => {
      const { rating, count } = ratings[one]
      const isOwn = one === skill
      const by = uncertaintyOf(isOwn ? count : count + 20) * surprise * (isOwn ? 1 : SPILL)
      return [one, { rating: rating + by, count: count + (isOwn ? 1 : 0) }]
    }),
  ) as unknown as Ratings
}

/** One step of fitting the weights by the same rule, seen from the position. */
export function weightsAfter(
  weights: readonly number[],
  features: readonly number[],
  { surprise, step }: { readonly surprise: number; readonly step: number },
): number[] {
  return weights.map((weight, i) => weight - step * surprise * features[i])
}
