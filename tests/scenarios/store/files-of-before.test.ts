import { cpSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { blockStore } from '../../../src/scenarios/store/block-store.js'
import { readNotes } from '../../../src/scenarios/store/coach-notes.js'
import { fileKeeper } from '../../../src/scenarios/store/keeping.js'
import { playerName } from '../../../src/scenarios/store/player-name.js'
import { ownThrows, readRecord } from '../../../src/scenarios/store/record.js'
import { replayRecord } from '../../../src/scenarios/store/replay.js'
import { supersededBy } from '../../../src/scenarios/store/superseded.js'
import { readSettings } from '../../../src/tui/settings/settings-file.js'
import { runCommand } from '../../cli/in-process.js'
import { throwToday } from './thrown-today.js'

/**
 * Files of every kind as the program wrote them when records and journals were of version 1, the coach's notes and the player's had one
 * format name, and a journal had the process number of its player in its name. Only the pins are of today's model.
 */
const folder = mkdtempSync(join(tmpdir(), 'dryboard-before-'))
cpSync(fileURLToPath(new URL('../files-of-before', import.meta.url)), folder, { recursive: true })
const played = [
  'records/house-forty-before-1.json',
  'records/short-thirty-five-said-1.json',
  'unfinished/flat-forty-five-left-1.7558.jsonl',
]
for (const name of played) throwToday(join(folder, name))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const environment = { DRYBOARD_DATA: folder, DRYBOARD_CONFIG: join(folder, 'config') }
const record = join(folder, 'records', 'house-forty-before-1.json')

describe('what the program kept before', () => {
  it('records, whose origin is unknown and whose choices count as they did', async () => {
    const read = await readRecord(record)
    expect(read).toMatchObject({
      version: 1,
      block: null,
      player: 'Ansa',
      origin: { cameToBe: 'unknown', begun: null },
    })
    expect(read.decisions.map(({ by }) => by)).toEqual(['unknown', 'unknown', 'unknown', 'unknown'])
    expect(ownThrows(read)).toEqual([true, true, true, true])
    expect(replayRecord(read, record).states).toHaveLength(5)
    const verified = await runCommand(['verify', record])
    expect(verified.exitCode).toBe(0)
    expect(verified.out).toMatch(/unfinished.*\n.*player Ansa;.*seed before\n.*origin unknown, when is unknown/)
    expect(verified.out).toContain('a record of version 1: only the pins vouch for its choices')
  })

  it('notes of coach and player, kit, settings and profile', async () => {
    expect(await readNotes(record)).toEqual([{ game: 1, frame: 1, text: 'Where did it turn?' }])
    const keeper = fileKeeper(environment)
    const { notes } = await keeper.openPast(join(folder, 'records', 'short-thirty-five-said-1.json'))
    expect(notes).toMatchObject({ mode: 'test', ownFindings: [{ throwIndex: 4, finding: 'wrong-ball' }] })
    expect(await keeper.findKit()).toMatchObject({ problem: '', kit: { bag: [{}, {}] } })
    expect(await readSettings(environment)).toMatchObject({ problem: '', settings: { mode: 'test', tour: 'seen' } })
    expect(await playerName(undefined, environment)).toBe('Ansa')
    expect((await keeper.listPast()).map(({ throws }) => throws).sort()).toEqual([4, 5])
  })

  it('a block in its journal, to go on with, which then has a number', async () => {
    const store = blockStore(folder)
    expect((await store.left()).blocks).toMatchObject([{ name: 'flat-forty-five-left-1' }])
    const { open, states } = await store.resume(true, undefined)
    expect(states).toHaveLength(4)
    expect([open.player, open.said !== null, open.madeBy]).toEqual(['Ansa', true, ['unknown', 'unknown', 'unknown']])
    const path = await open.file(states.at(-1)!)
    const filed = await readRecord(path)
    expect(filed.block).toMatch(/^[0-9a-f]{24}$/)
    expect(filed).toMatchObject({ version: 2, origin: { cameToBe: 'unknown', openedBefore: null } })
    expect(readdirSync(join(folder, 'unfinished'))).toEqual([])
    expect(existsSync(join(folder, 'notes', path.split('/').at(-1)!))).toBe(true)
  })

  it('a stopped record, to go on with, which its continuation then stands for', async () => {
    const resumed = await runCommand(['play', '--resume', record, '--no-grade'], { typed: [''], environment })
    const path = /^Record kept: (.*)$/m.exec(resumed.err)![1]!
    expect((await readRecord(path)).decisions.map(({ by }) => by)).toEqual([...new Array(4).fill('unknown'), 'player'])
    expect(supersededBy([await readRecord(record), await readRecord(path)])).toEqual([1, null])
    // Nor is it listed twice.
    expect((await fileKeeper(environment).listPast()).map((past) => past.path)).not.toContain(record)
  })
})
