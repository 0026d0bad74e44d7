import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { loadDrill } from '../../src/scenarios/drills/load-drill.js'
import { type BlockRecord, readRecord, recordText } from '../../src/scenarios/store/record.js'
import { gradeFair } from '../../src/sim/analysis/grade/fair-grade.js'
import { playerView } from '../../src/sim/analysis/view/player-view.js'
import { advance } from '../../src/sim/world/block/advance.js'
import type { BlockState, Decision } from '../../src/sim/world/block/types.js'
import { runCommand } from './in-process.js'
import { oneBallLane, playedRecord } from './played-record.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-loop-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const data = join(folder, 'data')
const run = (argv: readonly string[], typed: readonly string[] = []) =>
  runCommand(argv, { typed, environment: { DRYBOARD_DATA: data } })
const json = async (argv: readonly string[]) => JSON.parse((await run([...argv, '--json'])).out)

const SPEEDS = { [-1]: 'softer', 0: 'usual', 1: 'firmer' } as const
const typedLine = ({ aim, release }: Decision): string =>
  `feet ${aim.feetBoard} target ${aim.targetBoard} speed ${SPEEDS[aim.speedStep]} release ${release}`

/** The line that stands before a throw, and what it costs. */
const standing = (state: BlockState) => {
  const line = playerView(state)!.suggestion
  return { line, grade: gradeFair(state, line) }
}

/** Reports hold hundredths of a pin. */
const ROUNDED = 0.006

interface Answered {
  readonly answers: {
    readonly throws: {
      readonly answered: { readonly feet: number; readonly target: number }
      readonly costPins: number
      readonly marginPins: number
    }[]
  }[]
}

/** Ansa's block of dear throws, and the drill made of two of its moments: three choices, for the first goes on to the second ball. */
let record: string
let drill: string
beforeAll(async () => {
  record = await playedRecord(
    [oneBallLane(folder), '--seed', 'loop', '--player', 'Ansa', '--data', data],
    ['feet 39 target 30', 'feet 39 target 30', 'feet 39 target 30', 'feet 39 target 30'],
  )
  const made = await run([
    'drill',
    'new',
    record,
    '--at',
    '1,2',
    '--title',
    'Two moments',
    '--look-for',
    'Where did it turn?',
  ])
  drill = join(folder, 'drill.yaml')
  const { positions, ...rest } = parse(made.out)
  writeFileSync(drill, stringify({ ...rest, positions: [{ ...positions[0], throws: 2 }, positions[1]] }))
})

describe('a record', () => {
  it('is called by player, day and scenario', () => {
    expect(readdirSync(join(data, 'records'))).toEqual([
      expect.stringMatching(/^Ansa-\d{4}-\d\d-\d\d-one-ball-[0-9a-f]{6}-1\.json$/),
    ])
  })
})

describe('a drill made of somebody’s record', () => {
  let begun: ReturnType<typeof standing>

  it('counts only the good choices of who plays it, and says what was answered, best and how sure', async () => {
    const { positions } = await loadDrill(drill)
    const [first, second] = positions.map(({ state }) => state) as [BlockState, BlockState]
    // The line that stands at the beginning, which is good and not the best; then twice the best there is.
    begun = standing(first)
    const spare = standing(advance(first, begun.line))
    const after = standing(second)
    const costPins = begun.grade.givenAwayPins ?? Number.NaN
    expect(costPins).toBeGreaterThan(0.1)
    expect(costPins).toBeLessThan(3)
    const choices = [begun.line, spare.grade.best, after.grade.best]
    const played = await run(['drill', drill, '--player', 'Bo'], choices.map(typedLine))
    expect(played.exitCode).toBe(0)
    // The bowler, the bag and the lane once; then what was thrown with what it left.
    expect(played.out.match(/^The bag:$/gm)).toHaveLength(1)
    expect(played.out).toMatch(/^ {2}1-1\.1: .*slide 39, target 30; .* leaving /m)
    expect(played.out).toContain(`3 choices, 2 as good as the best: cost ${costPins.toFixed(1)} pins in all.`)

    const records = readdirSync(join(data, 'records')).filter((name) => name.startsWith('Bo-'))
    expect(records).toHaveLength(2)
    const paths = records.map((name) => join(data, 'records', name))
    const { players } = await json(['review', ...paths])
    expect(players).toHaveLength(1)
    const [bo] = players
    expect([bo.player, bo.choices]).toEqual(['Bo', 3])
    // Those three alone, at the sum of their costs: Ansa's gutters, which were given, have no part in it.
    expect(Math.abs(bo.costPins - costPins)).toBeLessThan(ROUNDED)
    expect(bo.dearest).toHaveLength(1)
    expect(Math.abs(bo.dearest[0].givenAwayPins - costPins)).toBeLessThan(ROUNDED)
    for (const { pins } of bo.findings) expect(pins).toBeLessThan(costPins + ROUNDED)
    // What was given is told as such and has no price.
    expect(bo.blocks.map(({ choices }: { choices: number }) => choices).sort()).toEqual([2, 3])

    const results = await json(['drill', 'results', drill, ...paths])
    const [{ costPins: inAll, ...counts }] = results.players
    expect(results.players).toHaveLength(1)
    expect(counts).toEqual({ player: 'Bo', answered: 2, choices: 3, asGoodAsTheBest: 2 })
    expect(Math.abs(inAll - costPins)).toBeLessThan(ROUNDED)
    for (const { answers } of results.positions) expect(answers).toHaveLength(1)
    const throws = results.positions.flatMap(
      (one: Answered) => one.answers[0]!.throws,
    ) as Answered['answers'][0]['throws']
    expect(throws.map(({ answered }) => [answered.feet, answered.target])).toEqual(
      choices.map(({ aim }) => [aim.feetBoard, aim.targetBoard]),
    )
    expect(throws.slice(1).map(({ costPins: cost }) => cost)).toEqual([0, 0])
    for (const { marginPins } of throws) expect(marginPins).toBeGreaterThanOrEqual(0.1)
    const { out } = await run(['drill', 'results', drill, ...paths])
    expect(out).toContain(`| Bo | 2 of 2 | 3 | 2 | ${costPins.toFixed(1)} |`)
  })

  it('has the answers in a key for the coach and not in the file', async () => {
    const one = join(folder, 'one.yaml')
    const position = { scenario: 'one-ball.yaml', seed: 'loop', lookFor: 'Where did it turn?' }
    writeFileSync(one, stringify({ version: 1, title: 'One', positions: [position] }))
    const { aim } = begun.grade.best
    const key = (await run(['drill', 'key', one])).out
    expect(key).toContain(`slide ${aim.feetBoard}, target ${aim.targetBoard}`)
    expect(JSON.stringify(parse(readFileSync(drill, 'utf8')).positions)).not.toMatch(/best|cost|pins/)
  })

  it('cannot be played before its words are written', async () => {
    const unwritten = join(folder, 'unwritten.yaml')
    const made = await run(['drill', 'new', record, '--at', '1,2'])
    expect(made.err).toContain('until then it cannot be played')
    writeFileSync(unwritten, made.out)
    const { exitCode, err } = await run(['drill', unwritten, '--check'])
    expect(exitCode).toBe(65)
    expect(err.split('\n')).toHaveLength(2)
    expect(err).toMatch(/unwritten\.yaml:\d+:\d+ positions 2 > lookFor: found the words that stand there/)
  })
})

const BEGUN = (day: number): string => `2026-03-${String(day).padStart(2, '0')}T19:00:00+01:00`

/** A copy of a record as a block of its own, of another player and day. */
async function copied(name: string, about: { player: string; day: number; throws?: number }): Promise<string> {
  const from = await readRecord(record)
  const { player, day, throws = from.decisions.length } = about
  const block = name
    .replaceAll(/\W/g, '')
    .padEnd(24, '0')
    .replaceAll(/[^0-9a-f]/g, 'a')
    .slice(0, 24)
  const copy: BlockRecord = {
    ...from,
    block,
    player,
    origin: { ...from.origin, begun: BEGUN(day), ended: BEGUN(day) },
    decisions: from.decisions.slice(0, throws),
  }
  const path = join(folder, name)
  mkdirSync(join(path, '..'), { recursive: true })
  writeFileSync(path, recordText(copy))
  return path
}

describe('a group', () => {
  const inbox = join(folder, 'inbox')

  it('is read with all its folders, in order of play; faulty files are told of and the rest goes on', async () => {
    // Twenty players in folders of their own, some with names written otherwise, and three files that are none.
    for (let player = 1; player <= 20; player++) {
      for (const day of [1, 9]) {
        const name = day === 9 ? `  pLAYER ${player} ` : `Player ${player}`
        // Two debriefs serve them all; the fifth plays otherwise from one day to the other.
        const throws = player === 5 ? (day === 9 ? 2 : 1) : 1 + ((player + day) % 2)
        await copied(`inbox/p${player}/b${player}-${day}.json`, { player: name, day, throws })
      }
    }
    writeFileSync(join(inbox, 'p1', 'spoiled.json'), '{ "format": "dryboard-record", ')
    const text = readFileSync(join(inbox, 'p2', 'b2-1.json'), 'utf8')
    writeFileSync(join(inbox, 'p2', 'tampered.json'), text.replace('"player": "Player 2"', '"player": "Player 3"'))
    writeFileSync(join(inbox, 'p3', 'stranger.json'), '{}')
    await run(['review', inbox])

    const begun = process.cpuUsage()
    const { exitCode, out, err } = await run(['review', inbox, '--json'])
    expect(process.cpuUsage(begun).user / 1e6).toBeLessThan(3)
    expect(exitCode).toBe(1)
    for (const name of ['spoiled', 'tampered', 'stranger']) expect(err).toContain(name)
    const review = JSON.parse(out)
    expect(review.faults.map(({ file }: { file: string }) => file)).toEqual([
      join(inbox, 'p1', 'spoiled.json'),
      join(inbox, 'p2', 'tampered.json'),
      join(inbox, 'p3', 'stranger.json'),
    ])
    expect(review.players).toHaveLength(20)
    for (const { player, blocks } of review.players) {
      expect(player).toMatch(/^pLAYER \d+$/)
      expect(blocks.map(({ day }: { day: string }) => day)).toEqual(['2026-03-01', '2026-03-09'])
    }
    const { group } = review
    expect(group.scenarios).toHaveLength(1)
    expect(group.scenarios[0].players).toHaveLength(20)
    for (const { cost } of group.scenarios[0].players) expect(cost.low).not.toBeNull()
    // Skills and what is not named add up to the whole, for the group and for each player.
    const sum = (pins: readonly number[]): number => pins.reduce((all, one) => all + one, 0)
    expect(sum([...group.skills, group.unnamed].map(({ pins }) => pins))).toBeCloseTo(group.costPins, 0)
    for (const { skills, unnamed, givenAway } of review.players) {
      expect(Math.abs(sum([...skills, unnamed].map((one) => one.mean)) - givenAway.total.mean)).toBeLessThan(0.15)
    }
  })

  it('compares two periods as a script does that knows only the JSON', async () => {
    const argv = [
      'review',
      join(inbox, 'p4'),
      join(inbox, 'p5'),
      '--compare',
      '2026-03-05',
      '--alias',
      'Player 5=Player 4',
    ]
    const { players } = await json(argv)
    expect(players).toHaveLength(1)
    const [{ blocks, change }] = players
    interface Told {
      readonly day: string
      readonly costPins: number
      readonly frames: number
      readonly ownChoices: number
    }
    const side = (of: readonly Told[]) => {
      const x = of.map(({ costPins, frames }) => (10 * costPins) / frames)
      const w = of.map(({ ownChoices }) => ownChoices)
      const all = w.reduce((total, one) => total + one, 0)
      const centre = x.reduce((total, one, at) => total + one * w[at]!, 0) / all
      const squares = x.reduce((total, one, at) => total + (w[at]! * (one - centre)) ** 2, 0)
      return { centre, error: Math.sqrt((of.length / (of.length - 1)) * squares) / all }
    }
    const before = side(blocks.filter(({ day }: Told) => day < '2026-03-05'))
    const after = side(blocks.filter(({ day }: Told) => day >= '2026-03-05'))
    expect(Math.abs(change.before.mean - before.centre)).toBeLessThan(0.1)
    expect(Math.abs(change.pins - (after.centre - before.centre))).toBeLessThan(0.2)
    // Two blocks on either side: one degree of freedom each, so 1 to 2 of Welch's; 97.5 % points 12.706 and 4.303.
    const variance = before.error ** 2 + after.error ** 2
    const degrees = variance ** 2 / (before.error ** 4 + after.error ** 4)
    const reach = (degrees >= 2 ? 4.303 : 12.706) * Math.sqrt(variance)
    // The JSON has a block's cost to a hundredth of a pin.
    expect(Math.abs((change.high - change.low) / (2 * reach) - 1)).toBeLessThan(0.02)
  })

  it('leaves out what lies outside a period, and says so', async () => {
    const { players, leftOut } = await json([
      'review',
      join(inbox, 'p6'),
      '--since',
      '2026-03-02',
      '--until',
      '2026-03-31',
    ])
    expect(players[0].blocks).toHaveLength(1)
    expect(leftOut).toEqual([{ record: join(inbox, 'p6', 'b6-1.json'), why: 'it was played on 2026-03-01' }])
    expect((await run(['review', inbox, '--since', 'yesterday'])).exitCode).toBe(64)
  })

  it('can go without names', async () => {
    const { out } = await run(['review', join(inbox, 'p7'), join(inbox, 'p8'), '--anonymous', '--json'])
    expect(out).not.toMatch(/player 7|inbox/i)
    expect(
      JSON.parse(out)
        .players.map(({ player }: { player: string }) => player)
        .sort(),
    ).toEqual(['Player A', 'Player B'])
  })

  it('goes into a spreadsheet with boards in columns and leaves that are no dates', async () => {
    const [header, row] = (await run(['review', join(folder, 'inbox', 'p1', 'b1-1.json'), '--csv'])).out.split('\n')
    const cells = new Map(header!.split(',').map((name, at) => [name, row!.split(',')[at]]))
    expect([cells.get('thrown ball'), cells.get('thrown slide'), cells.get('thrown target')]).toEqual([
      'weak-pearl',
      '39',
      '30',
    ])
    expect(cells.get('left')).toMatch(/^(pins? [\d-]+|all down)$/)
  })
})

describe('progress', () => {
  it('tells what choices cost over time, from what is priced already', async () => {
    const inbox = join(folder, 'inbox', 'p9')
    const report = await json(['progress', inbox, '--player', 'player 9', '--quick'])
    expect([report.blocks, report.unpriced]).toEqual([2, 0])
    const costs = (await json(['review', inbox])).players[0].blocks
    const weights = costs.map(({ ownChoices }: { ownChoices: number }) => ownChoices)
    const games = costs.map((one: { costPins: number; frames: number }) => (10 * one.costPins) / one.frames)
    const expected = (games[0] * weights[0] + games[1] * weights[1]) / (weights[0] + weights[1])
    expect(report.cost.mean).toBeCloseTo(expected, 1)
    expect(report.stretches.map(({ name }: { name: string }) => name)).toEqual(['2026-02-23', '2026-03-09'])
    expect((await run(['progress', inbox])).out).toContain('## Lanes met')
    const page = join(folder, 'progress.html')
    expect((await run(['progress', inbox, '--html', page])).exitCode).toBe(0)
    expect(readFileSync(page, 'utf8')).toContain('<main>')
  })

  it('says where there is nothing yet', async () => {
    const { exitCode, out } = await run(['progress', '--data', join(folder, 'nothing')])
    expect([exitCode, out]).toEqual([0, 'No block here has a choice with a price yet.'])
  })
})

describe('the name of the player', () => {
  it('lies with everything else where the data folder is named', async () => {
    const own = join(folder, 'own-data')
    const environment = { DRYBOARD_CONFIG: '' }
    const kept = await runCommand(['player', 'Ansa', '--data', own], { environment })
    expect(kept.err).toBe(`Name kept: ${join(own, 'config', 'profile.json')}`)
    expect((await runCommand(['player', '--data', own], { environment })).out).toBe('Ansa')
    const { err } = await runCommand(['play', oneBallLane(folder), '--no-grade', '--data', own], {
      environment,
      typed: [''],
    })
    expect(err).toMatch(/\/Ansa-/)
  })
})
