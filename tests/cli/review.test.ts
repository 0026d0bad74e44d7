import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { estimateOf } from '../../src/scenarios/reports/review/estimate.js'
import { runCommand } from './in-process.js'
import { oneBallLane, playedRecord } from './played-record.js'

const data = mkdtempSync(join(tmpdir(), 'dryboard-review-'))

/** A record of one frame's opening by a player, on a lane that needs little working out. */
async function oneThrow(player: string, seed: string): Promise<string> {
  const kept = await playedRecord([oneBallLane(data), '--seed', seed, '--data', data], ['feet 30 target 9'])
  const folder = join(data, player)
  mkdirSync(folder, { recursive: true })
  const path = join(folder, `${seed}.json`)
  writeFileSync(path, readFileSync(kept))
  return path
}

describe('review', () => {
  it('tells players apart by their folders, keeps notes beside records and debriefs only once', async () => {
    const records = [await oneThrow('ansa', 's1'), await oneThrow('brono', 's1')]
    const text = readFileSync(records[0]!, 'utf8')
    const note = 'Ask where <b>it</b> turned | not where it hit.'
    const noted = await runCommand(['review', records[0]!, '--at', '1', '--note', note])
    expect([noted.exitCode, noted.err]).toEqual([0, `Note kept: ${records[0]!.replace('.json', '.notes.json')}`])
    expect(readFileSync(records[0]!, 'utf8')).toBe(text)

    const argv = ['review', ...records, '--data', data]
    const { players } = JSON.parse((await runCommand([...argv, '--json'])).out)
    expect(players.map((one: { player: string }) => one.player)).toEqual(['ansa', 'brono'])
    expect(players[0].notes).toEqual([{ record: records[0], game: 1, frame: 1, text: note }])
    // One frame of ten: what it gave away counts tenfold for a game.
    expect(players[0].givenAway.total.mean).toBeCloseTo(10 * players[0].dearest[0].givenAwayPins, 0)
    expect(players[0].givenAway.total.low).toBeNull()
    // Both threw the same, so what was worked out once, the debrief and the account it comes from, serves both.
    const kept = readdirSync(join(data, 'debriefs'))
    expect(kept.map((name) => name.replace(/^[0-9a-f]+/, '')).sort()).toEqual(['.account.json', '.json'])
    expect(new Set(kept.map((name) => name.split('.')[0])).size).toBe(1)

    const begun = process.cpuUsage()
    const markdown = (await runCommand([...argv, '--markdown'])).out
    expect(process.cpuUsage(begun).user / 1e6).toBeLessThan(1)
    expect(markdown).toContain('# ansa')
    expect(markdown).toContain('## Costliest choices')
    const csv = (await runCommand([...argv, '--csv'])).out.split('\n')
    expect(csv).toHaveLength(3)
    expect(csv[1]).toMatch(/^ansa,.*,1,1,1,first-ball,weak-pearl,30,9,usual,strike,/)

    const page = join(data, 'report.html')
    await runCommand([...argv, '--html', page])
    const html = readFileSync(page, 'utf8')
    expect(html.match(/<svg /g)).toHaveLength(4)
    expect(html.match(/<section class="player"/g)).toHaveLength(2)
    expect(html.match(/<section class="group"/g)).toHaveLength(1)
    expect(html.match(/<polyline /g)).toHaveLength(2)
    expect(html).toContain('Ask where &lt;b&gt;it&lt;/b&gt; turned')
    // Nothing is fetched from anywhere.
    expect(html).not.toMatch(/\bsrc=|href="[^#]|https?:|url\(|<script/)
  })

  it('refuses a note that has nowhere to go', async () => {
    const path = await oneThrow('cille', 's1')
    expect((await runCommand(['review', path, '--note', 'where?'])).exitCode).toBe(65)
    expect((await runCommand(['review', path, '--at', '2-3', '--note', 'x'])).err).toMatch(/no frame 2-3/)
    expect((await runCommand(['review', path, '--at', '11', '--note', 'x'])).exitCode).toBe(64)
  })
})

describe('debrief', () => {
  it('is written as a page that needs nothing else, with the same figures as its JSON', async () => {
    const path = await oneThrow('darro', 's1')
    const [{ fair, known }] = JSON.parse((await runCommand(['debrief', path, '--json'])).out).throws
    await runCommand(['review', path, '--at', '1', '--note', 'Why so far <left>?'])
    const page = join(data, 'debrief.html')
    expect((await runCommand(['debrief', path, '--html', page])).err).toBe(`Debrief written: ${page}`)
    const html = readFileSync(page, 'utf8')
    const cells = [...html.matchAll(/<td class="n(?: wide)?">([^<]*)<\/td>/g)].map(([, text]) => text)
    // The page rounds to tenths what the JSON rounds to thousandths.
    const isTold = (pins: number): boolean => cells.some((text) => Math.abs(Number(text) - pins) <= 0.0505)
    expect([fair, known].map((one) => isTold(one.givenAwayPins))).toEqual([true, true])
    expect(html).toContain('Why so far &lt;left&gt;?')
    expect(html).not.toMatch(/\bsrc=|href="[^#]|https?:|url\(|<script/)
    // One frame is a page of its own, its balls numbered on the lane.
    expect((await runCommand(['debrief', path, '--html', page, '--at', '1'])).exitCode).toBe(0)
    const frame = readFileSync(page, 'utf8')
    expect(frame).toContain('game 1, frame 1</h1>')
    expect(frame).toMatch(/class="number" text-anchor="middle">1<\/text>/)
    expect(frame).toContain(fair.givenAwayPins.toFixed(1))
  })

  it('tells one frame in full, and of no frame that is not there', async () => {
    const path = await oneThrow('darro', 's1')
    const { out } = await runCommand(['debrief', path, '--at', '1'])
    const { throws } = JSON.parse((await runCommand(['debrief', path, '--json'])).out)
    expect(out).toMatch(
      throws[0].fair.givenAwayPins > 0
        ? new RegExp(`^ {2}cost ${throws[0].fair.givenAwayPins.toFixed(1)} pins$`, 'm')
        : /^ {2}good as the best$/m,
    )
    expect(out.match(/a small move$/gm)).toHaveLength(8)
    expect(out).toMatch(/^Oil at this shot on lane 3$/m)
    const wrong = await runCommand(['debrief', path, '--at', '2'])
    expect([wrong.exitCode, wrong.err]).toEqual([65, `${path}: it has no frame 1-2.`])
  })
})

describe('intervals', () => {
  // Judged by simple-statistics; 97.5 % points of Student's t for 2 and 9 degrees of freedom: 4.303 and 2.262.
  it.each([
    [[1, 4, 7.5], 4.303],
    [[3, 1, 4, 1, 5, 9, 2, 6, 5, 3], 2.262],
  ])('of %j', (values, point) => {
    const { mean: centre, low, high } = estimateOf(values.map((value) => ({ value, weight: 1 })))
    const reach = (point * sampleStandardDeviation(values)) / Math.sqrt(values.length)
    expect(centre).toBeCloseTo(mean(values), 12)
    expect(low).toBeCloseTo(mean(values) - reach, 9)
    expect(high).toBeCloseTo(mean(values) + reach, 9)
  })
})

describe('drill', () => {
  it('comes with the demo files', async () => {
    const { exitCode, out } = await runCommand(['drill', 'scenarios-demo/drill-moves.yaml', '--check'])
    expect([exitCode, out]).toEqual([0, 'scenarios-demo/drill-moves.yaml: fine, 3 positions'])
  })

  it('shows what was seen, takes a decision at each position and says what to look for', async () => {
    const file = join(data, 'drill.yaml')
    const position = {
      scenario: 'one-ball.yaml',
      seed: 'd',
      decisions: [{ ball: 'weak-pearl', feet: 24, target: 12 }],
      lookFor: 'Where did it turn?',
    }
    await oneThrow('darro', 's4')
    const practice = { ...position, scenario: 'house-forty' }
    writeFileSync(file, JSON.stringify({ version: 1, title: 'Two moments', positions: [practice, practice] }))
    const { exitCode, out, err } = await runCommand(['drill', file, '--data', data], { typed: ['2 and 1 left', ''] })
    expect(exitCode).toBe(0)
    expect(out.match(/practice: weak pearl, slide 24, target 12; .* leaving |practice: .* Strike\./g)).toHaveLength(2)
    expect(out.match(/^You throw: /gm)).toHaveLength(2)
    expect(out.match(/^Look for: Where did it turn\?$/gm)).toHaveLength(2)
    expect(err.match(/^Record kept: /gm)).toHaveLength(2)
  })

  it('names every fault, with its line', async () => {
    const file = join(data, 'bad-drill.yaml')
    writeFileSync(
      file,
      'version: 1\ntitle: x\npositions:\n  - { scenario: house-forty, seed: s, lookFor: y, decisions: [{ ball: marble, feet: 20, target: 10 }] }\n',
    )
    const { exitCode, err } = await runCommand(['drill', file])
    expect(exitCode).toBe(65)
    expect(err).toMatch(/bad-drill\.yaml:4:5 positions 1 > decisions 1: There is no ball "marble" in the bag/)
  })
})
