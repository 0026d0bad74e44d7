/**
 * Weights of a position's features (`rating.ts`): eight skills, then of decisions the sound share, log of the blind cost and whether
 * changing nothing is best, then of other questions log of the stakes and the ideal answer's distance from even. Fitted on scripted
 * players by `npm run study practice-difficulty`.
 */
export const DIFFICULTY_WEIGHTS: readonly number[] = [
  -0.646, -0.543, -0.905, -1.009, -1.258, -1.851, -0.824, -4.61, -2.318, -1.127, 0.371, 0.873, -1.992,
]
