import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { builtInNames } from '../../src/scenarios/library/library.js'
import { runCommand } from './in-process.js'

const fileWith = (text: string): string => {
  const path = join(mkdtempSync(join(tmpdir(), 'dryboard-')), 'lane.yaml')
  writeFileSync(path, text)
  return path
}
const house = readFileSync('scenarios-demo/house-forty.yaml', 'utf8')

describe('scenario check', () => {
  it('passes what is fine', async () => {
    const argv = ['scenario', 'check', '--quick', 'scenarios-demo/house-forty.yaml', 'unseen-draw']
    const { exitCode, out } = await runCommand(argv)
    expect(exitCode).toBe(0)
    expect(out.split('\n')).toEqual([
      'scenarios-demo/house-forty.yaml: fine',
      '  for 200-average tweener, right-handed, 6 balls, the sheet posted, 4 practice throws, one game',
      '  lane 3: 40 ft, 24 mL, 10:1, standard',
      'unseen-draw: fine',
      expect.stringMatching(/^ {2}for .*, nothing posted, /),
      expect.stringMatching(/^ {2}lane 7: \d.* mL, .*\(drawn by a seed; others differ\)$/),
      expect.stringMatching(/^ {2}lane 8: /),
    ])
  })

  it('goes through all files and fails if one does', async () => {
    const path = fileWith(house.replace('games: 1', 'games: 0'))
    const { exitCode, out } = await runCommand(['scenario', 'check', '--quick', path, 'house-forty'])
    expect(exitCode).toBe(1)
    const line = house.split('\n').findIndex((text) => text.startsWith('games:')) + 1
    expect(out.split('\n')).toEqual([
      `${path}:${line}:8 games: found 0; allowed is a whole number from 1 to 12.`,
      'house-forty: fine',
      expect.stringMatching(/^ {2}for /),
      '  lane 3: 40 ft, 24 mL, 10:1, standard',
    ])
  })

  it('weighs how much there is to lose and to learn', async () => {
    const { bag, ...rest } = parse(house)
    const oneBall = fileWith(JSON.stringify({ ...rest, bag: bag.slice(5), practiceThrows: 0 }))
    const [checked] = JSON.parse((await runCommand(['scenario', 'check', oneBall, '--json'])).out).checked
    const { thumbPins, stayPins } = checked.difficulty
    // With the oil in sight nobody does worse in expectation than by a rule that does not look at it.
    const { known, thumb, stay } = checked.expected
    for (const blind of [thumb, stay]) expect(known).toBeGreaterThan(blind)
    expect(checked.expected).not.toHaveProperty('fair')
    // The rule of thumb's opening line is made for balls that hook: with the straightest ball it is not the best one.
    expect(Math.min(thumbPins, stayPins)).toBeGreaterThan(0)
    expect(checked.informationPins).toBeGreaterThanOrEqual(0)
    // Seeing the oil is worth least to a ball that hardly feels it.
    expect(checked.informationPins).toBeLessThan(0.5)
  })
})

describe('scenario new and schema', () => {
  it('prints a scenario that passes the check', async () => {
    const { out } = await runCommand(['scenario', 'new', 'flat-forty-four'])
    expect(out).toMatch(/^# A Dryboard scenario\./)
    expect(out).toMatch(/^# What the player is told of the oil/m)
    expect((await runCommand(['scenario', 'check', '--quick', fileWith(out)])).exitCode).toBe(0)
    expect((await runCommand(['scenario', 'new', 'nothing'])).exitCode).toBe(66)
  })

  it('lists every built-in scenario with its oil', async () => {
    const { out } = await runCommand(['scenario', 'list'])
    for (const name of builtInNames()) expect(out).toMatch(new RegExp(`^${name} +(\\d|drawn|-)`, 'm'))
  })

  it('prints a JSON Schema that takes the demo files and refuses a spoiled one', async () => {
    const schema = z.fromJSONSchema(JSON.parse((await runCommand(['scenario', 'schema'])).out))
    expect(schema.safeParse(parse(house)).success).toBe(true)
    expect(schema.safeParse({ ...parse(house), games: 0 }).success).toBe(false)
    expect(schema.safeParse({ ...parse(house), gmaes: 1 }).success).toBe(false)
  })
})
