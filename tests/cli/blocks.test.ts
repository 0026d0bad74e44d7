import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runCommand } from './in-process.js'

const folder = () => mkdtempSync(join(tmpdir(), 'dryboard-'))
const recordIn = (data: string): string => join(data, 'records', readdirSync(join(data, 'records'))[0])

describe('play, line by line', () => {
  it('plays a whole block on Enter alone, and the sheet it prints adds up to the record’s replay', async () => {
    const data = folder()
    const argv = ['play', 'house-forty', '--seed', 'whole', '--data', data]
    const { exitCode, out, err } = await runCommand(argv, { typed: Array(60).fill('') })
    expect(exitCode).toBe(0)
    expect(err).toContain('Record kept: ')
    expect(out).toMatch(/Practice is over\./)
    const total = Number(/The block ends with (\d+)\./.exec(out)?.[1])
    const debrief = JSON.parse((await runCommand(['debrief', recordIn(data), '--json'])).out)
    expect(debrief.finished).toBe(true)
    expect(debrief.games).toEqual([total])
    const text = (await runCommand(['debrief', recordIn(data)])).out
    expect(text).toMatch(/Given away against the oil as it was: first balls \d/)
    expect(text.match(/^ +1-3 \|/gm)).toHaveLength(2)
    expect(Number(/; (\d+\.\d+) mL went off with the balls/.exec(text)?.[1])).toBeGreaterThan(0.1)
    // The grade stands before its result: nothing of the pins may come between choice and grade.
    const lines = out.split('\n')
    const graded = lines.flatMap((line, index) => (line.startsWith('This choice gives away') ? [index] : []))
    expect(graded).toHaveLength(debrief.throws.filter((one: { phase: string }) => one.phase === 'game').length)
    for (const index of graded) expect(lines[index - 1]).toMatch(/^You throw: /)
  })

  it('plays a script and says at which line one goes wrong', async () => {
    const script = join(folder(), 'moves.txt')
    writeFileSync(script, '# two throws, then a slip\nball 4 feet 22 target 12\n\n2 and 1 lift\n')
    const { exitCode, err } = await runCommand([
      'play',
      'house-forty',
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
    expect(out).toContain('2 and 1 left      feet two boards left, target one')
    expect(out).toContain('The block stops here, unfinished.')
    expect(readdirSync(data)).toEqual([])
  })

  it('draws a seed of its own where none is given, and says it', async () => {
    const seeds = await Promise.all(
      [1, 2].map(async () => /seed (\w+)$/m.exec((await runCommand(['play', 'house-forty'])).out)?.[1]),
    )
    expect(seeds[0]).toMatch(/^[0-9a-f]{10}$/)
    expect(seeds[0]).not.toBe(seeds[1])
  })
})

describe('auto and debrief', () => {
  it('give the same bytes for the same seed, and prices that agree with each other', async () => {
    const data = folder()
    const argv = ['auto', 'house-forty', '--policy', 'stay', '--seed', 'bytes', '--json']
    const once = await runCommand([...argv, '--save', '--data', data])
    expect((await runCommand(argv)).out).toBe(once.out)
    const [block] = JSON.parse(once.out).blocks
    const debrief = JSON.parse((await runCommand(['debrief', recordIn(data), '--json'])).out)
    expect(debrief.games).toEqual(block.games)
    expect(debrief.givenAwayFirstBalls).toBe(block.givenAwayFirstBalls)
    expect(debrief.givenAwaySpares).toBe(block.givenAwaySpares)
    const called = debrief.throws.reduce(
      (sum: number, one: { grade: { calledPins: number } | null }) => sum + (one.grade?.calledPins ?? 0),
      0,
    )
    expect(called).toBeCloseTo(block.givenAwayFirstBalls + block.givenAwaySpares, 1)
  })

  it('find that one who sees the oil gives nothing away on first balls', async () => {
    const { out } = await runCommand(['auto', 'flat-forty-five', '--policy', 'known', '--seed', 'k', '--json'])
    const [block] = JSON.parse(out).blocks
    expect(block.givenAwayFirstBalls).toBe(0)
  })
})
