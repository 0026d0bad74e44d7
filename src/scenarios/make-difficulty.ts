/**
 * Makes src/scenarios/library/difficulty-data.ts: `npx tsx src/scenarios/make-difficulty.ts`, some minutes on one core. To be made again
 * when the pins, the motion or the library change.
 */
import { writeFileSync } from 'node:fs'
import { difficultyOf } from './difficulty.js'
import { builtInNames } from './library/library.js'
import { loadScenario } from './load.js'

const rows: string[] = []
for (const name of builtInNames()) {
  const { thumbPins, memoPins = Number.NaN, stayPins } = difficultyOf(await loadScenario(name))
  rows.push(
    `  '${name}': { thumbPins: ${thumbPins.toFixed(1)}, memoPins: ${memoPins.toFixed(1)}, stayPins: ${stayPins.toFixed(1)} },`,
  )
  process.stderr.write(`${rows[rows.length - 1]}\n`)
}
writeFileSync(
  new URL('./library/difficulty-data.ts', import.meta.url),
  [
    '// Made by `npx tsx src/scenarios/make-difficulty.ts`; not edited by hand.',
    "import type { Difficulty } from '../difficulty.js'",
    '',
    '/** Pins a game that the scripted policies give away on each built-in scenario. */',
    'export const BUILT_IN_DIFFICULTY: Readonly<Record<string, Difficulty>> = {',
    ...rows,
    '}',
    '',
  ].join('\n'),
)
