/**
 * Weights of a position's features (`rating.ts`): eight skills, then of decisions the sound share, log of the blind cost and whether
 * changing nothing is best, then of other questions log of the stakes and the ideal answer's distance from even. Fitted on scripted
 * players by `npm run study practice-difficulty`.
 */
export const DIFFICULTY_WEIGHTS: readonly number[] = [
  -0.75, -0.857, -0.577, -0.977, -1.468, -1.7, -1.394, -4.73, -2.382, -1.045, 0.215, 1.188, -2.286,
]
