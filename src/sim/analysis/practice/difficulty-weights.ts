/**
 * Weights of a position's features (`rating.ts`): eight skills, then of decisions the sound share, log of the blind cost and whether
 * changing nothing is best, then of other questions log of the stakes and the ideal answer's distance from even. Fitted on scripted
 * players by `npm run study practice-difficulty`.
 */
export const DIFFICULTY_WEIGHTS: readonly number[] = [
  -0.247, -0.944, -0.726, -0.82, -0.848, -1.586, 0.654, -3.84, -1.96, -1.579, -0.036, -0.011, -1.658,
]
