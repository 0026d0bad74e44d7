import { appendFileSync, mkdirSync, mkdtempSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { WriteError } from '../../../src/scenarios/files/text/atomic-write.js'
import { NODE_FILES } from '../../../src/scenarios/files/text/file-layer.js'
import { keepAnswer, practiceLogPath, readPracticeLog } from '../../../src/scenarios/practice/practice-log.js'
import type { Answered } from '../../../src/sim/analysis/practice/learner.js'

const ANSWERED: Answered = {
  id: 'house-forty.practice-0.7.timing',
  kind: 'decide',
  skill: 'timing',
  family: { length: 'medium', shape: 'houseLike' },
  mode: 'practice',
  pins: 1.25,
  blindPins: 2,
  difficulty: 0.5,
  isSound: false,
  sureShare: 0.8,
  day: 20_000,
}
const WHEN = new Date('2026-03-08T12:00:00Z')

let path: string
beforeEach(() => {
  path = practiceLogPath(mkdtempSync(join(tmpdir(), 'practice-')), 'Ansa')
})
const keep = (answered = ANSWERED) => keepAnswer(path, { player: 'Ansa', answered, when: WHEN })

describe('the practice log', () => {
  it('gives back what was kept, with the day its own clock showed', async () => {
    await keep()
    await keep({ ...ANSWERED, id: 'second', sureShare: null })
    const { answers } = await readPracticeLog(path)
    expect(answers.map(({ id }) => id)).toEqual([ANSWERED.id, 'second'])
    const shown = JSON.parse(readFileSync(path, 'utf8').split('\n')[1]!).at as string
    expect(answers[0]).toEqual({ ...ANSWERED, day: Date.parse(shown.slice(0, 10)) / 86_400_000 })
  })

  it('is empty where nothing was practised yet', async () => {
    expect((await readPracticeLog(path)).answers).toEqual([])
  })

  it('takes a torn last line for none, and writes on without it', async () => {
    await keep()
    await keep({ ...ANSWERED, id: 'torn' })
    const whole = readFileSync(path, 'utf8')
    for (const cut of [1, 20, 100]) {
      writeFileSync(path, whole)
      truncateSync(path, whole.length - cut)
      expect((await readPracticeLog(path)).answers).toHaveLength(1)
      await keep({ ...ANSWERED, id: 'after' })
      expect((await readPracticeLog(path)).answers.map(({ id }) => id)).toEqual([ANSWERED.id, 'after'])
    }
  })

  it('tells one sentence, with line and field, about what it cannot be', async () => {
    await keep()
    const head = readFileSync(path, 'utf8').split('\n')[0]!
    const line = readFileSync(path, 'utf8').split('\n')[1]!
    const cases: [string, RegExp][] = [
      ['not json', /:1: this line is not JSON/],
      [`${head}\n{"a":`.concat('\n'), /:2: this line is not JSON/],
      [`${head}\n${line.replace('"timing"', '"juggling"')}\n`, /:2 skill: found "juggling"; allowed is one of/],
      [`${head}\n${line.replace('1.25', '-4')}\n`, /:2 pins: found -4; allowed is pins from 0 to 300/],
      [`${head}\n${line}\n[]\n`, /:3 the whole file: found \[\]/],
      [`${head.replace('"version":1', '"version":2')}\n`, /newer Dryboard/],
      [`${head.replace('dryboard-practice', 'other')}\n`, /format: found "other"/],
    ]
    for (const [text, sentence] of cases) {
      writeFileSync(path, text.endsWith('\n') ? text : `${text}\n`)
      const fault = await readPracticeLog(path).catch((cause: unknown) => cause)
      expect(fault).toMatchObject({ name: 'ScenarioError' })
      expect((fault as { sentences: string[] }).sentences).toHaveLength(1)
      expect((fault as Error).message).toMatch(sentence)
    }
  })

  it('leaves the file as it was when an answer cannot be put on the disk', async () => {
    await keep()
    const before = readFileSync(path, 'utf8')
    const full = {
      ...NODE_FILES,
      open: async (...args: Parameters<typeof NODE_FILES.open>) => {
        const file = await NODE_FILES.open(...args)
        file.datasync = async () => {
          throw Object.assign(new Error('full'), { code: 'ENOSPC' })
        }
        return file
      },
    }
    await expect(keepAnswer(path, { player: 'Ansa', answered: ANSWERED, when: WHEN }, full)).rejects.toThrow(WriteError)
    expect(readFileSync(path, 'utf8')).toBe(before)
  })

  it('keeps players apart whose names look alike, and puts nothing outside its folder', () => {
    const data = '/data'
    const paths = ['Ansa', 'ansa!', '../ansa', undefined].map((name) => practiceLogPath(data, name))
    expect(new Set(paths).size).toBe(paths.length)
    for (const one of paths) expect(dirname(one)).toBe(join(data, 'practice'))
  })

  it('says so where a folder stands in its place', async () => {
    mkdirSync(path, { recursive: true })
    await expect(readPracticeLog(path)).rejects.toMatchObject({ name: 'ScenarioError' })
    expect(() => appendFileSync(path, '')).toThrow()
  })
})
