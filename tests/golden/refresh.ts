import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { GOLDEN_BLOCKS, playGolden } from './blocks.js'
import type { GoldenFigures } from './digest.js'
import { gradeDigest } from './graded.js'

// `npx tsx tests/golden/refresh.ts` after a change that is meant to change results; say in the commit why.
// With --print the figures go to standard output and the kept ones stay.
const figures: Record<string, GoldenFigures> = {}
for (const block of GOLDEN_BLOCKS) figures[block.name] = await playGolden(block)
// Short lists stand on one line, as the formatter has them.
const text = `${JSON.stringify(figures, null, 2).replaceAll(/\[\s+(\d+)\s+\]/g, '[$1]')}\n`
const revision = `// Made by \`npx tsx tests/golden/refresh.ts\`; not edited by hand.

/**
 * Names how choices are graded and accounted for: a digest of all that is worked out of a short block. A test holds it against
 * today's grade, so that nothing kept by an older one is taken for today's.
 */
export const GRADE_REVISION = '${gradeDigest()}'
`
const filed = (path: string): string => fileURLToPath(new URL(path, import.meta.url))
if (process.argv.includes('--print')) process.stdout.write(text + revision)
else {
  writeFileSync(filed('./records.json'), text)
  writeFileSync(filed('../../src/scenarios/store/grade-revision.ts'), revision)
}
