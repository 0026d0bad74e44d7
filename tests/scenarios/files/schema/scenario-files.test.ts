import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { drillJsonSchema, scenarioJsonSchema } from '../../../../src/scenarios/files/schema/json-schema.js'
import { scenarioSchema } from '../../../../src/scenarios/files/schema/scenario.js'
import { builtInScenario } from '../../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { scenarioHash } from '../../../../src/scenarios/store/hashes.js'

const short = builtInScenario('short-thirty-five')!
const folder = mkdtempSync(join(tmpdir(), 'dryboard-files-'))

function written(data: unknown): string {
  const path = join(folder, `lane-${Math.floor(performance.now() * 1000)}.json`)
  writeFileSync(path, JSON.stringify(data))
  return path
}

const pass = { direction: 'forward', boards: [2, 38], microlitresPerBoard: 300, fromFeet: 0, toFeet: 40 } as const
const lanes = (over: object) => [{ name: 'lane 1', passes: [{ ...pass, ...over }] }]

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>
  readonly items?: Schema
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly description?: string
}

/** Paths of all fields without a word for editors. */
function undescribed(schema: Schema, path = ''): string[] {
  const { properties = {}, items, anyOf = [], oneOf = [] } = schema
  const inner = [items, ...anyOf, ...oneOf].flatMap((one) => (one ? undescribed(one, path) : []))
  const own = Object.entries(properties).flatMap(([name, field]) => {
    const at = path === '' ? name : `${path}.${name}`
    return [...(field.description === undefined ? [at] : []), ...undescribed(field, at)]
  })
  return [...new Set([...inner, ...own])]
}

describe('schemas for editors', () => {
  it('say a word on every field, of scenarios and of drills', () => {
    expect(undescribed(scenarioJsonSchema() as Schema)).toEqual([])
    expect(undescribed(drillJsonSchema() as Schema)).toEqual([])
  })

  it('take a drill with a scenario in it, and refuse one without words', () => {
    const accepts = new Ajv({ strict: false }).compile(drillJsonSchema())
    const position = { scenario: 'own', seed: 's', lookFor: 'x' }
    const drill = { version: 1, title: 'x', positions: [position], scenarios: { own: short } }
    expect(accepts(JSON.parse(JSON.stringify(drill)))).toBe(true)
    expect(accepts({ ...drill, positions: [{ scenario: 'own', seed: 's' }] })).toBe(false)
  })
})

describe('boards', () => {
  // As sheets have them: 2L-2R is from the second board on the left to the second on the right, 38 to 2 counted from the right.
  it.each([
    ['2L-2R', [2, 38]],
    ['10L - 12R', [12, 30]],
    ['20r-8r', [8, 20]],
  ])('may be written from either edge: %s', (boards, expected) => {
    const { lanes: read } = scenarioSchema.parse({ ...short, lanes: lanes({ boards }) })
    expect(read[0]!.passes![0]!.boards).toEqual(expected)
  })

  it('make the same scenario either way, which a record holds as numbers', () => {
    const [one, other] = [
      scenarioSchema.parse({ ...short, lanes: lanes({ boards: '2L-2R' }) }),
      scenarioSchema.parse({ ...short, lanes: lanes({}) }),
    ]
    expect(scenarioHash(one)).toBe(scenarioHash(other))
    expect(scenarioSchema.parse(one)).toEqual(one)
  })

  it('are refused the wrong way round, and off the lane', () => {
    for (const boards of ['2R-2L', '40L-2R', '2L', 'L2-R2']) {
      expect(scenarioSchema.safeParse({ ...short, lanes: lanes({ boards }) }).success, boards).toBe(false)
    }
  })
})

describe('oil that no lane has', () => {
  it.each([
    ['next to none', { microlitresPerBoard: 0.5 }, /found 0 mL in all; allowed is a lane's oil of 5 to 45 mL/],
    ['231 mL', { microlitresPerBoard: 1000, strokes: 7, boards: [4, 36] }, /found 231 mL in all/],
    ['oil to the pins', { toFeet: 60 }, /found oil to 60 feet; allowed is/],
  ])('is a fault: %s', async (_name, over, sentence) => {
    await expect(loadScenario(written({ ...short, lanes: lanes(over) }))).rejects.toThrow(sentence)
  })
})

describe('a seed in the file', () => {
  it('is read, and changes nothing where there is none', async () => {
    expect((await loadScenario(written({ ...short, seed: 'league-7' }))).data.seed).toBe('league-7')
    expect('seed' in scenarioSchema.parse(short)).toBe(false)
  })
})
