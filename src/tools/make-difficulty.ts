/**
 * Makes src/scenarios/library/hardness-data.ts: `npx tsx src/tools/make-difficulty.ts`, some minutes on one core. To be made again
 * when the pins, the motion or the library change.
 */
import { writeFileSync } from 'node:fs'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/library/load.js'
import { hardnessOf } from '../sim/analysis/explore/hardness.js'

const rows: string[] = []
for (const name of builtInNames()) {
  const { thumbPins, stayPins } = hardnessOf(await loadScenario(name))
  rows.push(`  '${name}': { thumbPins: ${thumbPins.toFixed(1)}, stayPins: ${stayPins.toFixed(1)} },`)
  process.stderr.write(`${rows[rows.length - 1]}\n`)
}
writeFileSync(
  new URL('../scenarios/library/hardness-data.ts', import.meta.url),
  [
    '// Made by `npx tsx src/tools/make-difficulty.ts`; not edited by hand.',
    "import type { Hardness } from '../../sim/analysis/explore/hardness.js'",
    '',
    '/** Pins a game that the scripted policies give away on each built-in scenario. */',
    'export const BUILT_IN_HARDNESS: Readonly<Record<string, Hardness>> = {',
    ...rows,
    '}',
    '',
  ].join('\n'),
)
