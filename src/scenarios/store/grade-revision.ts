// Made by `npx tsx tests/golden/refresh.ts`; not edited by hand.

/**
 * Names how choices are graded and accounted for: a digest of all that is worked out of a short block. A test holds it against
 * today's grade, so that nothing kept by an older one is taken for today's.
 */
export const GRADE_REVISION = '4119d76d8d732982'
