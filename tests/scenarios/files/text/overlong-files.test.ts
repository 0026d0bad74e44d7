import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { progressOn } from '../../../../src/scenarios/commands/console/progress.js'
import { scenarioFrom } from '../../../../src/scenarios/files/scenario/scenario.js'
import { tooMuchToRead } from '../../../../src/scenarios/files/text/notation-size.js'
import { ScenarioError } from '../../../../src/scenarios/files/text/scenario-error.js'
import { readSourceText } from '../../../../src/scenarios/files/text/source-text.js'
import { builtInScenario } from '../../../../src/scenarios/library/library.js'
import { runCommand } from '../../../cli/in-process.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-overlong-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** What a text is answered with, and the processor time that took. */
function answerTo(text: string): { sentences: readonly string[]; seconds: number } {
  const begun = process.cpuUsage()
  let sentences: readonly string[] = []
  try {
    scenarioFrom('lane', readSourceText('lane.yaml', text))
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    sentences = fault.sentences
  }
  const { user, system } = process.cpuUsage(begun)
  return { sentences, seconds: (user + system) / 1e6 }
}

const BYTES = 4_000_000
const fields = (count: number): string => Array.from({ length: count }, (_, place) => `f${place}: 1`).join('\n')

// The shapes at which the parser's time or memory goes with the square of the length, or far beyond it.
describe('a file that is long for its own sake', () => {
  it.each<[string, string]>([
    ['unknown fields', fields(24_000)],
    ['ever more unknown fields', fields(400_000)],
    ['numbers', `[${'1,'.repeat(BYTES / 2)}1]`],
    ['numbers below the limit', `[${'1,'.repeat(49_000)}1]`],
    ['one name again and again', 'a: 1\n'.repeat(24_000)],
    ['brackets within brackets', '['.repeat(BYTES)],
    ['brackets within brackets below the limit', '['.repeat(49_000)],
    ['quoted texts side by side', '"" '.repeat(400_000)],
    ['lists within lists', '- '.repeat(40_000)],
    ['brackets that close nothing', ']'.repeat(49_000)],
    ['quoted lines', `a: "${'x\n'.repeat(49_000)}"`],
    ['wrong bowlers', `field: [${'{ ball: x },'.repeat(12_000)}]`],
    ['a name as long as the file', `${'x'.repeat(1_000_000)}: 1`],
  ])('is answered at once and briefly: %s', (_, text) => {
    const { sentences, seconds } = answerTo(text)
    expect(sentences.length).toBeGreaterThan(0)
    expect(sentences.length).toBeLessThanOrEqual(21)
    expect(Math.max(...sentences.map((one) => one.length))).toBeLessThan(1000)
    // Each took from ten seconds to minutes; this is far from any clock's mood.
    expect(seconds).toBeLessThan(6)
  })

  it('has its first faults told and the others counted', () => {
    const { sentences } = answerTo(`games: 0\n${fields(100)}`)
    expect(sentences).toHaveLength(21)
    expect(sentences[0]).toMatch(/^lane\.yaml:1:/)
    // A hundred unknown fields, games, and what is missing of title, version, lanes, bag and bowler.
    expect(sentences[20]).toBe('lane.yaml: and 86 more faults after these.')
  })

  it('is not the longest record there may be, nor prose full of brackets and quotes', () => {
    const aim = { feet: 24.5, target: 12.5, speed: 'usual', release: 'strike' }
    const decision = { ball: 'sanded-asymmetric', ...aim, standing: 1023 }
    const record = { scenario: builtInScenario('busy-pair'), decisions: new Array(2000).fill(decision) }
    expect(tooMuchToRead(JSON.stringify(record, null, 1))).toBeNull()
    expect(tooMuchToRead(JSON.stringify({ notes: `":[ it's "so" `.repeat(280) }))).toBeNull()
  })

  it('has a name that stands twice told at its second place, in YAML and in JSON', () => {
    expect(answerTo('games: 1\ntitle: a\ngames: 2').sentences).toEqual(['lane.yaml:3:1: This name stands here twice.'])
    expect(answerTo('{"a": {"b": 1, "b": 2}}').sentences).toEqual(['lane.yaml:1:16: This name stands here twice.'])
  })
})

describe('what is no plain file of some megabytes', () => {
  it('is refused before it is read', async () => {
    const pipe = join(folder, 'pipe')
    execFileSync('mkfifo', [pipe])
    const long = join(folder, 'long.yaml')
    writeFileSync(long, '')
    truncateSync(long, 50 * 2 ** 30)
    for (const [path, code, says] of [
      ['/dev/zero', 66, /a device or a pipe, not a file/],
      [pipe, 66, /a device or a pipe, not a file/],
      [folder, 66, /a folder, not a file/],
      [long, 65, /more than 4000000 bytes/],
    ] as const) {
      const { exitCode, err } = await runCommand(['pattern', path])
      expect([exitCode, err]).toEqual([code, expect.stringMatching(says)])
    }
  })
})

describe('a drill names files of its own folder only', () => {
  const inner = join(folder, 'drills')
  mkdirSync(inner)
  writeFileSync(join(folder, 'secret.yaml'), 'password: hunter2')
  writeFileSync(join(inner, 'secret.yaml'), 'password: hunter2')
  writeFileSync(join(inner, 'lane.yaml'), JSON.stringify(builtInScenario('house-forty')))
  symlinkSync(join(folder, 'secret.yaml'), join(inner, 'link.yaml'))
  const check = async (scenario: string) => {
    const position = { scenario, seed: '1', lookFor: 'See.' }
    const path = join(inner, 'drill.json')
    writeFileSync(path, JSON.stringify({ version: 1, title: 'A drill', positions: [position] }))
    const { exitCode, out, err } = await runCommand(['drill', path, '--check'])
    return [exitCode, out + err] as const
  }

  it.each([
    '../secret.yaml',
    join(folder, 'secret.yaml'),
    'link.yaml',
    '/dev/zero',
    '.',
    '..',
    'drill.json/../../secret.yaml',
  ])('not %s', async (scenario) => {
    const [code, said] = await check(scenario)
    expect(code).toBe(65)
    expect(said).toMatch(/positions 1 > scenario: found .*; a drill names scenario files .* own folder\.$/)
    expect(said).not.toContain('hunter2')
  })

  it('and shows nothing of a file that is no scenario', async () => {
    const [code, said] = await check('secret.yaml')
    expect(code).toBe(65)
    expect(said).toMatch(/this file is no sound scenario/)
    expect(said).not.toMatch(/hunter2|password/)
  })

  it('but any scenario beside it, or a built-in one', async () => {
    expect((await check('lane.yaml'))[0]).toBe(0)
    expect((await check('house-forty'))[0]).toBe(0)
    expect((await check('nowhere'))[0]).toBe(66)
  })
})

it('tells of long work as it goes: a word on a terminal, a line now and then elsewhere', async () => {
  for (const watched of [true, false]) {
    const hints: string[] = []
    const lines: string[] = []
    const progress = progressOn({ watched, hint: (one) => hints.push(one), tell: (one) => lines.push(one) }, 'steps')
    progress.reached(1, 3)
    await new Promise((later) => setTimeout(later, 2100))
    progress.reached(2, 3)
    progress.reached(3, 3)
    progress.over()
    expect(hints).toEqual(watched ? ['steps: 2 of 3', 'steps: 3 of 3', ''] : [])
    expect(lines).toEqual(watched ? [] : ['steps: 2 of 3'])
  }
})
