import { expect, it } from 'vitest'
import { shortBlockWords } from '../../../src/scenarios/words/practice-session-words.js'
import { familyWords } from '../../../src/scenarios/words/practice-words.js'

// The classes are the trade's: flat or sport, house, and what lies between; common practice, no source.
it('names a family of oil so that it reads as a sentence', () => {
  expect(familyWords('medium houseLike')).toBe('medium house-like oil')
  expect(familyWords('short between')).toBe('short oil between flat and house-like')
  expect(familyWords('long flat')).toBe('long flat oil')
  expect(shortBlockWords('medium between')).toContain('on fresh medium oil between flat and house-like: 6 frames')
})
