import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { runCommand } from './in-process.js'

const fileWith = (text: string): string => {
  const path = join(mkdtempSync(join(tmpdir(), 'dryboard-')), 'lane.yaml')
  writeFileSync(path, text)
  return path
}
const house = readFileSync('scenarios-demo/house-forty.yaml', 'utf8')

describe('scenario check', () => {
  it('passes what is fine', async () => {
    const { exitCode, out } = await runCommand(['scenario', 'check', 'scenarios-demo/house-forty.yaml', 'unseen-draw'])
    expect(exitCode).toBe(0)
    expect(out.split('\n')).toEqual(['scenarios-demo/house-forty.yaml: fine', 'unseen-draw: fine'])
  })

  it('goes through all files and fails if one does', async () => {
    const path = fileWith(house.replace('games: 1', 'games: 0'))
    const { exitCode, out } = await runCommand(['scenario', 'check', path, 'house-forty'])
    expect(exitCode).toBe(1)
    const line = house.split('\n').findIndex((text) => text.startsWith('games:')) + 1
    expect(out.split('\n')).toEqual([
      `${path}:${line}:8 games: found 0; allowed is a whole number from 1 to 12.`,
      'house-forty: fine',
    ])
  })
})

describe('scenario new and schema', () => {
  it('prints a scenario that passes the check', async () => {
    const { out } = await runCommand(['scenario', 'new', 'flat-forty-five'])
    expect((await runCommand(['scenario', 'check', fileWith(out)])).exitCode).toBe(0)
    expect((await runCommand(['scenario', 'new', 'nothing'])).exitCode).toBe(66)
  })

  it('prints a JSON Schema that takes the demo files and refuses a spoiled one', async () => {
    const schema = z.fromJSONSchema(JSON.parse((await runCommand(['scenario', 'schema'])).out))
    expect(schema.safeParse(parse(house)).success).toBe(true)
    expect(schema.safeParse({ ...parse(house), games: 0 }).success).toBe(false)
    expect(schema.safeParse({ ...parse(house), gmaes: 1 }).success).toBe(false)
  })
})
