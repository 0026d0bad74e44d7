import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { parse } from 'yaml'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { laneSummaries } from '../../src/scenarios/library/scenario-summary.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { runCommand } from './in-process.js'
import { oneBallLane, playedRecord } from './played-record.js'

const folder = (): string => mkdtempSync(join(tmpdir(), 'dryboard-coach-'))

async function made(argv: readonly string[]) {
  const { exitCode, out, err } = await runCommand(['scenario', 'new', ...argv])
  expect([exitCode, err]).toEqual([0, ''])
  const path = join(folder(), 'own.yaml')
  writeFileSync(path, out)
  return { path, scenario: await loadScenario(path) }
}

// Judged by the measuring of laid oil, which is checked against the governing body's rule elsewhere.
it.each([
  [46, 27, 2],
  [35, 22, 1.5],
  [40, 24, 10],
])('a new scenario has the oil asked for: %d ft, %d mL, %d:1', async (length, volume, ratio) => {
  const { scenario } = await made(['--length', `${length}`, '--volume', `${volume}`, '--ratio', `${ratio}`])
  const [lane] = laneSummaries(scenario, '1')
  expect(lane).toMatchObject({ lengthFeet: length, volumeMillilitres: volume, ratio })
})

it('keeps the figures of the oil that are not asked for, and says where there are none', async () => {
  const { scenario } = await made(['flat-forty-four', '--length', '43'])
  const [before] = laneSummaries(await loadScenario('flat-forty-four'), '1')
  expect(laneSummaries(scenario, '1')[0]).toEqual({ ...before, lengthFeet: 43 })
  expect(before).toMatchObject({ lengthFeet: 44, drawn: false })
  const drawn = await runCommand(['scenario', 'new', 'unseen-draw', '--ratio', '3'])
  expect([drawn.exitCode, drawn.err]).toEqual([65, expect.stringMatching(/drawn by a seed .* say --length too\.$/)])
})

it('writes out a bowler to be changed, who bowls as the typical one does', async () => {
  const { scenario } = await made(['--bowler', '180,left,stroker', '--own-bowler'])
  const { bowler } = scenario.setup
  const typical = levelProfile('180', 'stroker', 'left')
  expect(bowler.level).toBe('own')
  expect(bowler.hand).toBe('left')
  // Written to a tenth of a mph, a whole rpm and a hundredth of a degree.
  expect(bowler.strike.speedMetresPerSecond).toBeCloseTo(typical.strike.speedMetresPerSecond, 1)
  expect(bowler.strike.spinRadiansPerSecond / typical.strike.spinRadiansPerSecond).toBeCloseTo(1, 2)
  expect(bowler.error.angleRadians / typical.error.angleRadians).toBeCloseTo(1, 1)
  const wrong = await runCommand(['scenario', 'new', '--bowler', 'golden'])
  expect([wrong.exitCode, wrong.err]).toEqual([
    65,
    expect.stringMatching(/^--bowler level: found "golden"; allowed is /),
  ])
})

it('makes a drill of a record in one file: the player stands where the block stood, and it is graded', async () => {
  const data = folder()
  const lane = oneBallLane(data, 1)
  const script = ['', 'feet 30 target 9', '', 'feet 24 target 12', '']
  const record = await playedRecord([lane, '--seed', 'c', '--data', data, '--player', 'Ansa'], script)
  const { decisions } = JSON.parse(readFileSync(record, 'utf8'))

  const named = await runCommand([
    'drill',
    'new',
    record,
    '--at',
    '2',
    '--title',
    'Second frames',
    '--look-for',
    'Why there?',
  ])
  const drill = parse(named.out)
  expect(drill).toMatchObject({ title: 'Second frames', positions: [{ seed: 'c', throws: 1 }] })
  const before = drill.positions[0].decisions
  expect(before).toEqual(
    decisions
      .slice(0, before.length)
      .map(({ standing: _pins, by: _by, ...one }: { standing: number; by: string }) => one),
  )

  const elsewhere = join(folder(), 'drill.yaml')
  writeFileSync(elsewhere, named.out)
  const { out, exitCode } = await runCommand(['drill', elsewhere, '--data', data], { typed: ['feet 30 target 9'] })
  expect(exitCode).toBe(0)
  expect(out).toMatch(/Game 1, frame 2, ball 1/)
  expect(out).toMatch(/^(Cost \d|Good as the best)/m)
  // The last words are the coach's and what it came to: nothing more is offered to be thrown.
  expect(out.split('\n').slice(-3)).toEqual([
    'Look for: Why there?',
    '',
    expect.stringMatching(/^1 choice, [01] as good/),
  ])
  expect(out.match(/^Enter throws: /gm)).toHaveLength(1)
  expect((await runCommand(['drill', elsewhere, '--check'])).out).toMatch(/: fine, 1 position$/)
  const none = await runCommand(['drill', 'new', record, '--at', '9'])
  expect([none.exitCode, none.err]).toEqual([65, `${record}: it has no frame 1-9.`])
})

/** Where a block that two tests look at is worked out once. */
const shared = folder()

it('makes a drill of the dearest choices, dearest first, without what was best or what they cost', async () => {
  const data = shared
  const record = await playedRecord([oneBallLane(data), '--seed', 'd', '--data', data], ['feet 30 target 9'])
  const { out } = await runCommand(['drill', 'new', record, '--data', data])
  expect(parse(out).positions).toHaveLength(1)
  expect(parse(out).positions[0].lookFor).toMatch(/^Frame 1-1\. .*\?$/)
  expect(JSON.stringify(parse(out).positions)).not.toMatch(/best|cost|pins/)
})

it('reviews folders of records, and passes notes over', async () => {
  const data = shared
  const inbox = join(data, 'inbox')
  mkdirSync(inbox)
  expect((await runCommand(['review', inbox])).err).toBe(`${inbox}: no record lies in this folder.`)
  const argv = [oneBallLane(data), '--seed', 'd', '--data', data, '--player', 'Brono']
  for (const number of ['10', '2']) {
    writeFileSync(join(inbox, `block-${number}.json`), readFileSync(await playedRecord(argv, ['feet 30 target 9'])))
  }
  await runCommand(['review', join(inbox, 'block-2.json'), '--at', '1', '--note', 'Well chosen?'])
  const { players } = JSON.parse((await runCommand(['review', inbox, '--data', data, '--json'])).out)
  expect(players.map(({ player }: { player: string }) => player)).toEqual(['Brono'])
  // Both were begun within a second; blocks come in the order of play.
  expect(players[0].blocks.map(({ record }: { record: string }) => record).sort()).toEqual([
    join(inbox, 'block-10.json'),
    join(inbox, 'block-2.json'),
  ])
})

it('lists only the scenarios that words are said of, with what they are for', async () => {
  const { out } = await runCommand(['scenario', 'list', 'left-handed', 'sport'])
  expect(out).toMatch(/^left-flat /m)
  expect(out).not.toMatch(/^house-forty /m)
  const none = await runCommand(['scenario', 'list', 'nowhere'])
  expect([none.exitCode, none.out]).toEqual([65, ''])
})
