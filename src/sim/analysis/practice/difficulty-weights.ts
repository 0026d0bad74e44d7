/**
 * Weights of a position's features (`rating.ts`): eight skills, then of decisions the sound share, log of the blind cost and whether
 * changing nothing is best, then of other questions log of the stakes and the ideal answer's distance from even. Fitted on scripted
 * players by `npm run study practice-difficulty`.
 */
export const DIFFICULTY_WEIGHTS: readonly number[] = [
  -0.147, -0.879, -0.743, -0.75, -1.058, -1.252, 0.41, -3.271, -2.066, -1.551, -0.04, -0.785, -1.379,
]
