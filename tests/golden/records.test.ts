import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { GRADE_REVISION } from '../../src/scenarios/store/grade-revision.js'
import { GOLDEN_BLOCKS, playGolden } from './blocks.js'
import type { GoldenFigures } from './digest.js'
import { gradeDigest } from './graded.js'

const kept: Record<string, GoldenFigures> = JSON.parse(readFileSync(new URL('./records.json', import.meta.url), 'utf8'))

/**
 * Results kept from an earlier run, bit for bit: the language's own promise (IEEE 754 for + - * / and square root) is all
 * that replaying a record on another machine rests on. A change that is meant to change results refreshes the file.
 */
describe('whole blocks come out as they were kept, to the last bit', () => {
  it('has kept every block and no other', () => {
    expect(Object.keys(kept)).toEqual(GOLDEN_BLOCKS.map(({ name }) => name))
  })

  it.each(GOLDEN_BLOCKS)('$name', async (block) => {
    expect(await playGolden(block)).toEqual(kept[block.name])
  })
})

describe('what is worked out of a block', () => {
  it('is of the grade that kept debriefs are named by', () => {
    expect(
      gradeDigest(),
      'Grades, accounts or debriefs come out otherwise than when GRADE_REVISION was made, so debriefs kept before would be shown as of today. If that is meant, run npx tsx tests/golden/refresh.ts.',
    ).toBe(GRADE_REVISION)
  })
})
