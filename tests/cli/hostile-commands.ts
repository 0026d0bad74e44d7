import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { stringify } from 'yaml'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { leakIn } from './hostile-payloads.js'
import { runCommand } from './in-process.js'
import { soundRecord } from './spoiled-sources.js'

type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json }

/** Data with a text put to the end of every string in it, or with one more field of that name in every table. */
function poisoned(value: Json, payload: string, how: 'values' | 'names'): Json {
  if (typeof value === 'string') return how === 'values' ? `${value.slice(0, 20)}${payload}` : value
  if (Array.isArray(value)) return value.map((one) => poisoned(one, payload, how))
  if (typeof value !== 'object' || value === null) return value
  const fields = Object.entries(value).map(([name, one]) => [name, poisoned(one as Json, payload, how)] as const)
  return Object.fromEntries(how === 'names' ? [...fields, [payload, payload]] : fields)
}

/** The data with one text of prose in it replaced where the format takes it. */
function reworded(data: Json, payload: string): Json {
  return { ...(data as object), title: `T${payload}`, purpose: `P${payload}`, notes: `N${payload}` } as Json
}

/** Commands that read a scenario quickly, and some that take a second or more. */
const ON_SCENARIO = [
  ['pattern'],
  ['pattern', '--json'],
  ['scenario', 'check', '--quick'],
  ['scenario', 'check', '--quick', '--json'],
]
const SLOW_ON_SCENARIO = [['scenario', 'check'], ['room'], ['bag', '--after', '0'], ['auto', '--policy', 'stay']]
const ON_RECORD = [['verify'], ['verify', '--json']]
const SLOW_ON_RECORD = [
  ['debrief'],
  ['debrief', '--json'],
  ['review'],
  ['review', '--csv'],
  ['drill', 'new'],
  ['progress'],
]

/** Gives files full of a text, under names full of it, to every command, and returns what leaked with the command that let it. */
export async function commandLeaks(payload: string, slow: boolean): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-hostile-'))
  const leaks: string[] = []
  const look = async (
    argv: readonly string[],
    typed: readonly string[] = [],
    environment: Record<string, string> = {},
  ) => {
    const { out, err, exitCode } = await runCommand(argv, {
      typed,
      environment: { DRYBOARD_DATA: join(folder, 'data'), ...environment },
    })
    const leak = leakIn(`${out}\n${err}`)
    if (leak !== null) leaks.push(`${argv.slice(0, 2).join(' ')}: ${leak}`)
    if (exitCode === 70) leaks.push(`${argv.slice(0, 2).join(' ')} ends with 70: ${err}`)
  }
  const write = (name: string, data: Json): string => {
    const path = join(folder, name)
    writeFileSync(path, JSON.stringify(data))
    return path
  }
  try {
    const house = builtInScenario('house-forty') as unknown as Json
    const record = JSON.parse(await soundRecord()) as { readonly [name: string]: Json }
    const named = `x${payload.replaceAll('/', '')}`
    mkdirSync(join(folder, named))
    const scenarios = [
      write(`${named}/a${named}.json`, poisoned(house, payload, 'values')),
      write('names.json', poisoned(house, payload, 'names')),
      write('prose.json', reworded(house, payload)),
    ]
    const yaml = join(folder, `${named}.yaml`)
    writeFileSync(yaml, stringify(reworded(house, payload)))
    for (const path of [...scenarios, yaml])
      for (const argv of slow ? [...ON_SCENARIO, ...SLOW_ON_SCENARIO] : ON_SCENARIO) await look([...argv, path])
    await look(['play', scenarios[2]!, '--no-grade'], ['', payload, `ball ${payload}`, 'quit'])
    await look(['trace', scenarios[2]!, '--ball', payload, '--feet', '20', '--target', '10'])
    const records = [
      write(`r${named}.json`, record),
      write('record.json', poisoned(record, payload, 'values')),
      write('record-names.json', poisoned(record, payload, 'names')),
      write('told.json', {
        ...record,
        player: `A${payload}`,
        program: `p${payload}`,
        name: `n${payload}`,
        seed: `s${payload}`,
      }),
    ]
    for (const path of records)
      for (const argv of slow ? [...ON_RECORD, ...SLOW_ON_RECORD] : ON_RECORD) await look([...argv, path])
    const position = { scenario: `own${payload}`, seed: payload, lookFor: payload }
    const drill = { version: 1, title: `D${payload}`, positions: [{ ...position, scenario: 'house-forty', seed: '1' }] }
    await look(['drill', write(`${named}drill.json`, drill)], [''])
    await look(['drill', write('drill.json', { ...drill, positions: [position] }), '--check'])
    await look(['scenario', 'list', payload])
    await look(['scenario', 'new', payload])
    await look(['player', payload])
    await look(['player'], [], { DRYBOARD_PLAYER: payload })
    await look([payload])
    await look(['pattern', `--${payload}`])
    await look(['pattern', 'house-forty', '--seed', payload])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  return leaks
}
