import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { debriefOf } from '../../src/scenarios/reports/debrief/debrief.js'
import { debriefLines } from '../../src/scenarios/reports/debrief/debrief-lines.js'
import { debriefReport } from '../../src/scenarios/reports/debrief/debrief-report.js'
import { readRecord } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { runCommand } from './in-process.js'

const folder = () => mkdtempSync(join(tmpdir(), 'dryboard-'))
/** A short scenario with two balls and its oil posted, so that every choice is priced in little time. */
const twoBalls = (): string => {
  const path = join(folder(), 'two-balls.yaml')
  const house = builtInScenario('house-forty')!
  const bag = house.bag.filter(({ id }) => id === 'weak-pearl' || id === 'plastic-spare')
  writeFileSync(path, JSON.stringify({ ...house, bag, practiceThrows: 0 }))
  return path
}
const recordIn = (data: string): string => join(data, 'records', readdirSync(join(data, 'records'))[0])

describe('play, line by line', () => {
  it('plays a whole block on Enter alone, and the sheet it prints adds up to the record’s replay', async () => {
    const data = folder()
    const argv = ['play', 'house-forty', '--seed', 'whole', '--no-grade', '--data', data]
    const { exitCode, out, err } = await runCommand(argv, { typed: Array(60).fill('') })
    expect(exitCode).toBe(0)
    expect(err).toContain('Record kept: ')
    expect(readdirSync(join(data, 'unfinished'))).toEqual([])
    expect(out).toMatch(/Practice is over\./)
    const total = Number(/The block ends with (\d+)\./.exec(out)?.[1])
    const verified = JSON.parse((await runCommand(['verify', recordIn(data), '--json'])).out)
    expect(verified.verified).toMatchObject([
      { record: recordIn(data), same: true, words: expect.stringContaining(`total ${total}`), total, finished: true },
    ])
  })

  it('says the grade before the result, from what had been seen, and the debrief says the same', async () => {
    const data = folder()
    const argv = ['play', twoBalls(), '--seed', 'graded', '--data', data]
    const { out } = await runCommand(argv, { typed: ['feet 30 target 9'] })
    const lines = out.split('\n')
    const graded = lines.flatMap((line, index) => (/^(Cost|Good as the best)/.test(line) ? [index] : []))
    expect(graded).toHaveLength(1)
    for (const index of graded) {
      expect(lines[index - 1]).toMatch(/^You throw: /)
      expect(lines[index]).toMatch(/^Cost \d+\.\d pins\. .+ (Try|Surer) .+\.$/)
      expect(lines[index + 1]).toMatch(/ Seen: /)
    }
    const record = await readRecord(recordIn(data))
    const debrief = debriefOf(replayRecord(record, 'record'))
    const report = debriefReport(record, debrief)
    report.throws.forEach(({ fair }, index) => {
      const said = Number(/^Cost (\d+\.\d) pins/.exec(lines[graded[index]])?.[1] ?? 0)
      expect(Math.abs((fair?.givenAwayPins ?? Number.NaN) - said)).toBeLessThanOrEqual(0.0501)
    })
    // A ball sent from inside out to the dry edge of a house lane gives something away; common practice, no source.
    expect(report.throws[0].fair?.givenAwayPins).toBeGreaterThan(0.5)
    // Five parts that close (law of total expectation): throw by throw, and summed over the block.
    for (const { ledger } of report.throws) {
      const { givenAwayPins, patternSwingPins, hiddenPins, deliveryPins, carryPins, totalPins } = ledger!
      expect(givenAwayPins + patternSwingPins + hiddenPins + deliveryPins + carryPins).toBeCloseTo(totalPins, 4)
    }
    const summed = report.throws.reduce((sum, { ledger }) => sum + ledger!.totalPins, 0)
    expect(report.ledger.block.totalPins).toBeCloseTo(summed, 4)
    const text = debriefLines(debrief).join('\n')
    expect(text).toMatch(/Cost of the choices: first balls \d/)
    expect(text).toMatch(/Pins short of the best if you could see the oil: first balls \d/)
    expect(text).toMatch(/^game 1 {2}( +[+-]?\d+\.\d){5} {2}= +[+-]?\d/m)
    expect(text).toContain('Findings, costliest first')
    expect(text).toContain('Other choices')
    expect(text.match(/^ +1-3 \|/gm)).toHaveLength(2)
  })

  it('plays a script and says at which line one goes wrong', async () => {
    const script = join(folder(), 'moves.txt')
    writeFileSync(script, '# two throws, then a slip\nball 4 feet 22 target 12\n\n2 and 1 lift\n')
    const { exitCode, err } = await runCommand([
      'play',
      'house-forty',
      '--no-grade',
      '--seed',
      's',
      '--script',
      script,
      '--data',
      folder(),
    ])
    expect(exitCode).toBe(65)
    expect(err).toBe(`${script}:4: A move ends with left or right, as in 2 and 1 left.`)
  })

  it('ends well, and keeps nothing, when the input ends before a throw', async () => {
    const data = folder()
    const { exitCode, out, err } = await runCommand(['play', 'short-thirty-five', '--data', data], {
      typed: ['?', 'bag'],
    })
    expect([exitCode, err]).toEqual([0, ''])
    expect(out).toContain('2 and 1 left      move: feet 2 boards left, target 1')
    expect(out).toContain('The block stops here, unfinished.')
    const left = readdirSync(data, { recursive: true, withFileTypes: true })
    expect(left.filter((entry) => entry.isFile())).toEqual([])
  })

  it('draws a seed of its own where none is given, and says it', async () => {
    const seeds = await Promise.all(
      [1, 2].map(async () => /seed (\w+)$/m.exec((await runCommand(['play', 'house-forty'])).out)?.[1]),
    )
    expect(seeds[0]).toMatch(/^[0-9a-f]{10}$/)
    expect(seeds[0]).not.toBe(seeds[1])
  })
})

describe('auto', () => {
  it('gives the same bytes for the same seed, and a record that comes out the same', async () => {
    const data = folder()
    const argv = ['auto', twoBalls(), '--policy', 'stay', '--seed', 'bytes', '--json']
    const once = await runCommand([...argv, '--save', '--data', data])
    expect((await runCommand(argv)).out).toBe(once.out)
    const [block] = JSON.parse(once.out).blocks
    const [verified] = JSON.parse((await runCommand(['verify', recordIn(data), '--json'])).out).verified
    expect([verified.same, verified.total]).toEqual([true, block.total])
  })

  it('finds that one who sees the oil gives nothing away on first balls', async () => {
    const { out } = await runCommand(['auto', twoBalls(), '--policy', 'known', '--seed', 'k', '--json'])
    const [block] = JSON.parse(out).blocks
    expect(block.givenAwayFirstBalls).toBe(0)
  })
})
