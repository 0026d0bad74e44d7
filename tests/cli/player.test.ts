import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { noNotes } from '../../src/scenarios/store/block-notes.js'
import { fileKeeper } from '../../src/scenarios/store/keeping.js'
import { readRecord, recordText } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { runCommand } from './in-process.js'
import { playedRecord } from './played-record.js'

const folder = (): string => mkdtempSync(join(tmpdir(), 'dryboard-player-'))

async function oneThrow(argv: readonly string[], environment: Record<string, string> = {}): Promise<string> {
  return playedRecord(['house-forty', '--seed', 'who', '--data', folder(), ...argv], [''], environment)
}

it('is named in the record: by the command line, else the environment, else the profile; else by nobody', async () => {
  const config = folder()
  const environment = { DRYBOARD_CONFIG: config }
  expect(await readRecord(await oneThrow([], environment))).not.toHaveProperty('player')
  expect((await runCommand(['player'], { environment })).out).toMatch(/No name is kept/)
  expect((await runCommand(['player', 'Ansa of Quillmoor'], { environment })).exitCode).toBe(0)
  expect((await runCommand(['player'], { environment })).out).toBe('Ansa of Quillmoor')
  expect((await readRecord(await oneThrow([], environment))).player).toBe('Ansa of Quillmoor')
  const both = { ...environment, DRYBOARD_PLAYER: 'Brono' }
  expect((await readRecord(await oneThrow([], both))).player).toBe('Brono')
  expect((await readRecord(await oneThrow(['--player', 'Cille'], both))).player).toBe('Cille')
})

it('is of whoever goes on with somebody else’s block, in which what was thrown before is given', async () => {
  const record = await oneThrow(['--player', 'Cille'])
  const goneOn = await playedRecord(['--resume', record, '--player', 'Brono', '--data', folder()], [''])
  const { player, decisions } = await readRecord(goneOn)
  expect([player, ...decisions.map(({ by }) => by)]).toEqual(['Brono', 'given', 'player'])
})

it('is named in what the screen files', async () => {
  const named = await oneThrow(['--player', 'Darro'])
  const { scenario, states } = replayRecord(await readRecord(named), named)
  const keeper = fileKeeper({ DRYBOARD_DATA: folder(), DRYBOARD_PLAYER: 'Darro' })
  const path = await keeper.file(scenario, states.at(-1)!, noNotes('block'))
  const [filed, played] = [await readRecord(path), await readRecord(named)]
  expect(filed.player).toBe('Darro')
  expect(filed).toEqual({ ...played, block: filed.block, origin: filed.origin })
})

it('makes a record no other than it was where nobody is named: older files read and write as before', async () => {
  const path = await oneThrow([])
  const { player: _none, ...older } = await readRecord(path)
  expect(recordText(older)).toBe(readFileSync(path, 'utf8'))
})

it('refuses what is no name, and a spoiled profile, in one sentence and without touching it', async () => {
  expect((await runCommand(['play', 'house-forty', '--player', ' '])).exitCode).toBe(64)
  const bad = await runCommand(['play', 'house-forty'], { environment: { DRYBOARD_PLAYER: 'a\nb' } })
  expect([bad.exitCode, bad.err]).toEqual([
    65,
    'DRYBOARD_PLAYER: found "a\\nb"; allowed is one line of text, 1 to 60 characters.',
  ])
  const config = folder()
  const profile = join(config, 'profile.json')
  for (const text of ['{', 'null', '[]', '{"format":"dryboard-profile","version":1,"player":7}']) {
    writeFileSync(profile, text)
    const { exitCode, err, out } = await runCommand(['player'], {
      environment: { DRYBOARD_CONFIG: config },
    })
    expect([exitCode, out]).toEqual([65, ''])
    expect(err).toMatch(/^.*profile\.json[: ].*\.$/)
    expect(readFileSync(profile, 'utf8')).toBe(text)
  }
})
