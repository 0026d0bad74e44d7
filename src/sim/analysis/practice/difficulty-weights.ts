/**
 * Weights of a position's features (`rating.ts`): eight skills, then of decisions the sound share, log of the blind cost and whether
 * changing nothing is best, then of other questions log of the stakes and the ideal answer's distance from even. Fitted on scripted
 * players by `npm run study practice-difficulty`.
 */
export const DIFFICULTY_WEIGHTS: readonly number[] = [
  0.066, -0.894, -0.156, -0.568, -0.967, -1.302, 0.564, -3.012, -1.43, -1.802, 0.077, -1.269, -0.771,
]
