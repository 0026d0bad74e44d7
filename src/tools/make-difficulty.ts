/**
 * Makes src/scenarios/library/difficulty-data.ts: `npm run make:difficulty`, some minutes on one core. To be made again
 * when the pins, the motion or the library change.
 */
import { writeFileSync } from 'node:fs'
import { beginScenario } from '../scenarios/files/scenario/begin-scenario.js'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/library/load.js'
import { difficultyOf } from '../sim/analysis/explore/difficulty.js'

const rows: string[] = []
for (const name of builtInNames()) {
  const scenario = await loadScenario(name)
  const { thumbPins, memoPins = Number.NaN, stayPins } = difficultyOf((seed) => beginScenario(scenario, seed))
  rows.push(
    `  '${name}': { thumbPins: ${thumbPins.toFixed(1)}, memoPins: ${memoPins.toFixed(1)}, stayPins: ${stayPins.toFixed(1)} },`,
  )
  process.stderr.write(`${rows[rows.length - 1]}\n`)
}
writeFileSync(
  new URL('../scenarios/library/difficulty-data.ts', import.meta.url),
  [
    '// Made by `npm run make:difficulty`; not edited by hand.',
    "import type { Difficulty } from '../../sim/analysis/explore/difficulty.js'",
    '',
    '/** Pins a game that the scripted policies give away on each built-in scenario. */',
    'export const BUILT_IN_DIFFICULTY: Readonly<Record<string, Difficulty>> = {',
    ...rows,
    '}',
    '',
  ].join('\n'),
)
