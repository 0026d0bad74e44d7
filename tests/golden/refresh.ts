import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { GOLDEN_BLOCKS, playGolden } from './blocks.js'
import type { GoldenFigures } from './digest.js'

// `npx tsx tests/golden/refresh.ts` after a change that is meant to change results; say in the commit why.
// With --print the figures go to standard output and the kept ones stay.
const figures: Record<string, GoldenFigures> = {}
for (const block of GOLDEN_BLOCKS) figures[block.name] = await playGolden(block)
// Short lists stand on one line, as the formatter has them.
const text = `${JSON.stringify(figures, null, 2).replaceAll(/\[\s+(\d+)\s+\]/g, '[$1]')}\n`
if (process.argv.includes('--print')) process.stdout.write(text)
else writeFileSync(fileURLToPath(new URL('./records.json', import.meta.url)), text)
