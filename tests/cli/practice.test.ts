import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readyPositions } from '../../src/scenarios/practice/position-set.js'
import { DECIDED_SKILLS, KINDS } from '../../src/sim/analysis/practice/position.js'
import { isStandingBest } from '../../src/sim/analysis/practice/select-positions.js'
import { SESSION_MINUTES } from '../../src/sim/analysis/practice/session.js'
import { runCommand } from './in-process.js'

const folder = () => mkdtempSync(join(tmpdir(), 'dryboard-practice-'))
const practise = (data: string, typed: readonly string[], argv: readonly string[] = []) =>
  runCommand(['practice', '--plain', '--minutes', '5', '--data', data, ...argv], { typed })

describe('practice line by line', () => {
  it('says its plan, solves the first of a family, and keeps every answer before its price', async () => {
    const data = folder()
    const { exitCode, out } = await practise(data, ['', 'quit'], ['--player', 'Ansa'])
    expect(exitCode).toBe(0)
    expect(out).toMatch(/^5 minutes, about 8 positions: .* and a short test of 2 without grades\.$/m)
    expect(out).toMatch(/First of its family, solved for you\./)
    expect(out).toMatch(/^Nothing comes back yet\./m)
    const [file] = readdirSync(join(data, 'practice'))
    const lines = readFileSync(join(data, 'practice', file!), 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(lines[0]).toEqual({ format: 'dryboard-practice', version: 1, player: 'Ansa' })
    expect(lines[1]).toMatchObject({ mode: 'shown' })
  })

  it('objects to what is no answer and goes on', async () => {
    const typed = ['', '', '', '', 'left', '?', 'bag', 'quit']
    const { exitCode, out } = await practise(folder(), typed, ['--minutes', '5'])
    expect(exitCode).toBe(0)
    expect(out).toMatch(/"(left|)" is no answer to this/)
    expect(out).toMatch(/^ {2}1 sanded-asymmetric: /m)
  })

  it('tells of a log that is none in one sentence, and leaves it as it is', async () => {
    const data = folder()
    await practise(data, ['', 'quit'])
    const path = join(data, 'practice', 'unnamed.jsonl')
    writeFileSync(path, '{"format":"other"}\n')
    const { exitCode, err } = await practise(data, [])
    expect(exitCode).toBe(65)
    expect(err.split('\n')).toHaveLength(1)
    expect(readFileSync(path, 'utf8')).toBe('{"format":"other"}\n')
  })

  it('gives the profile as JSON, the same each time', async () => {
    const data = folder()
    const [first, second] = await Promise.all([1, 2].map(() => runCommand(['practice', '--json', '--data', data])))
    expect(first).toEqual(second)
    const profile = JSON.parse(first!.out)
    expect(profile.answers).toBe(0)
    expect(profile.calibration).toBeNull()
    expect(profile.skills).toHaveLength(8)
  })

  it('refuses minutes and kinds there are none of', async () => {
    for (const argv of [
      ['--minutes', '7'],
      ['--kind', 'juggle'],
    ]) {
      const { exitCode, err } = await runCommand(['practice', ...argv])
      expect(exitCode).toBe(64)
      expect(err).toMatch(/allowed (is|are)/)
    }
  })
})

it('names every kind and length of session in its help', async () => {
  const { out } = await runCommand(['practice', '--help'])
  const words = out.replaceAll(/\s+/g, ' ')
  expect(words).toContain(KINDS.join(', '))
  expect(words).toContain('5, 10 or 20')
  expect(SESSION_MINUTES).toEqual([5, 10, 20])
})

describe('the library of drills', () => {
  it('names what there is where it is asked for something else', async () => {
    const { exitCode, err } = await runCommand(['drill', 'library:juggling'])
    expect(exitCode).toBe(66)
    expect(err).toMatch(/library:line, library:ball/)
  })

  it('has something to decide in each of its positions', async () => {
    const { positions } = await readyPositions()
    for (const one of positions) {
      if (one.kind !== 'decide') continue
      const costs = one.answers.map(({ costPins }) => costPins)
      expect(Math.min(...costs)).toBe(0)
      expect(Math.max(...costs)).toBeGreaterThanOrEqual(1)
      expect(costs.filter((cost) => cost === 0).length).toBeLessThanOrEqual(costs.length / 2)
    }
  })

  const counts = async () => {
    const { positions } = await readyPositions()
    return DECIDED_SKILLS.map((skill) => {
      const own = positions.filter((one) => one.kind === 'decide' && one.skill === skill)
      return { skill, count: own.length, standing: own.filter(isStandingBest).length }
    })
  }

  it('has some of every skill, and does not teach to stay', async () => {
    const all = await counts()
    for (const { skill, count } of all) expect(count, skill).toBeGreaterThan(0)
    const sum = (of: 'count' | 'standing') => all.reduce((total, one) => total + one[of], 0)
    expect(sum('standing') / sum('count')).toBeLessThanOrEqual(0.5)
  })

  it('has at least 24 positions of every skill', async () => {
    for (const { skill, count } of await counts()) expect(count, skill).toBeGreaterThanOrEqual(24)
  })
})
