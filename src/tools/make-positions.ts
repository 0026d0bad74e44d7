/**
 * Makes src/scenarios/practice/positions-data.ts: `npm run make:positions -- --minutes 7`, again and again until it says that it is
 * done (about half an hour of one core in all). What earlier runs found is kept in .positions/ and gone on from; `--part 1/2` and
 * `--part 2/2`, or another `--from N`, may run side by side. To be made again when the pins, the motion, the grades or the library change (see --afresh).
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beginScenario } from '../scenarios/files/scenario/begin-scenario.js'
import { builtInNames } from '../scenarios/library/library.js'
import { loadScenario } from '../scenarios/library/load.js'
import { positionsText } from '../scenarios/practice/positions-text.js'
import { GRADE_REVISION } from '../scenarios/store/grade-revision.js'
import { scenarioHash } from '../scenarios/store/hashes.js'
import { modelFingerprint } from '../scenarios/store/model-fingerprint.js'
import { selectPositions } from '../sim/analysis/practice/select-positions.js'
import { type Found, walkBlock } from '../sim/analysis/practice/walk.js'

const FOLDER = '.positions'
const DATA = new URL('../scenarios/practice/positions-data.ts', import.meta.url)
/** More walks than this are not needed; what is missing then is said. */
const MOST_WALKS = 120

const args = process.argv.slice(2)
const option = (name: string, otherwise: string): string => {
  const at = args.indexOf(name)
  return at < 0 ? otherwise : (args[at + 1] ?? otherwise)
}
const minutes = Number(option('--minutes', '7'))
const [part, parts] = option('--part', '1/1').split('/').map(Number)
if (!(minutes > 0) || !(part >= 1 && part <= parts)) {
  process.stderr.write('Say --minutes N above 0, and --part K/N with K from 1 to N.\n')
  process.exit(64)
}
if (args.includes('--afresh')) rmSync(FOLDER, { recursive: true, force: true })
mkdirSync(FOLDER, { recursive: true })

/** Lanes without other bowlers and with one bag: what was seen is then all on the screen. */
const names: string[] = []
for (const name of builtInNames()) {
  const { setup, data } = await loadScenario(name)
  if (setup.field.length === 0 && (data as { takeBalls?: number }).takeBalls === undefined) names.push(name)
}
const pathOf = (walk: number): string => join(FOLDER, `${String(walk).padStart(3, '0')}.json`)

/** Walks that were made, in order. */
const walksSoFar = (): Found[][] =>
  readdirSync(FOLDER)
    .filter((name) => /^\d+\.json$/.test(name))
    .sort()
    .map((name) => JSON.parse(readFileSync(join(FOLDER, name), 'utf8')))

const until = performance.now() + minutes * 60_000
for (let walk = Number(option('--from', '0')) + part - 1; walk < MOST_WALKS; walk += parts) {
  if (existsSync(pathOf(walk))) continue
  if (performance.now() > until || selectPositions(walksSoFar()).missing.length === 0) break
  const name = names[walk % names.length]
  const scenario = await loadScenario(name)
  const found = [...walkBlock(beginScenario(scenario, `practice-${walk}`), name)]
  writeFileSync(pathOf(walk), JSON.stringify(found))
  const { missing } = selectPositions(walksSoFar())
  process.stderr.write(
    `walk ${walk}, ${name}: ${found.flatMap(({ positions }) => positions).length} found; wanting ${missing.join(', ') || 'nothing'}\n`,
  )
}

const walks = walksSoFar()
const { positions, missing, perGame } = selectPositions(walks)
const used = [...new Set(positions.map(({ moment }) => moment.scenario))].sort()
const scenarios: Record<string, string> = {}
for (const name of used) scenarios[name] = scenarioHash((await loadScenario(name)).data)
const text = positionsText({ model: modelFingerprint(), grades: GRADE_REVISION, scenarios, perGame, positions })
const lines = [
  '// Made by `npm run make:positions`; not edited by hand.',
  '',
  '/** Ready positions, as positions-text.ts reads them. */',
  `export const POSITIONS_TEXT = ${JSON.stringify(text)}`,
]
const isDone = missing.length === 0 || args.includes('--as-it-stands')
if (isDone) writeFileSync(DATA, `${lines.join('\n')}\n`)
process.stderr.write(
  `${positions.length} positions of ${walks.length} walks (${readdirSync(FOLDER).length} files), ${text.length} characters; still wanting ${missing.join(', ') || 'nothing'}; ${isDone ? 'written' : 'not written yet'}.\n`,
)
