import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import type { Scenario } from '../../../src/scenarios/files/scenario/scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { notesText } from '../../../src/scenarios/store/block-notes.js'
import { debriefsFolder, recordsFolder, saidWithRecord } from '../../../src/scenarios/store/data-folder.js'
import { keepAccount } from '../../../src/scenarios/store/kept-account.js'
import { COMPARISONS, keepFigures, readFigures } from '../../../src/scenarios/store/kept-figures.js'
import { listPastBlocks } from '../../../src/scenarios/store/past-blocks.js'
import { type BlockRecord, recordOf, recordText } from '../../../src/scenarios/store/record.js'
import { rememberedOf } from '../../../src/scenarios/store/remembered.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../../src/sim/world/pins/leaves.js'
import { madeUpAccount } from '../../tui/fixtures.js'

let data: string
let scenario: Scenario
let block: BlockState
beforeAll(async () => {
  data = await mkdtemp(join(tmpdir(), 'dryboard-remembered-'))
  const loaded = await loadScenario('house-forty')
  scenario = { ...loaded, data: { ...loaded.data, practiceThrows: 0 }, setup: { ...loaded.setup, practiceThrows: 0 } }
  block = beginScenario(scenario, 'remembered')
  while (block.spot) block = advance(block, playerView({ ...block, standing: FULL_RACK })!.suggestion)
  await mkdir(recordsFolder(data), { recursive: true })
})
afterAll(() => rm(data, { recursive: true, force: true }))

async function file(name: string, about: Partial<BlockRecord>): Promise<BlockRecord> {
  const record = { ...recordOf(scenario, block), ...about }
  await writeFile(join(recordsFolder(data), name), recordText(record))
  return record
}
const remembered = async () => rememberedOf(data, await listPastBlocks(recordsFolder(data), { player: 'Ansa' }))

describe('what the home screen remembers', () => {
  it('is the sums of kept accounts a game, by skill; what is not priced is counted and not graded', async () => {
    const account = madeUpAccount(block)
    const grades = account.throws.map(({ graded }) => graded?.grade ?? null)
    const own = await file('own.json', { player: 'Ansa' })
    await keepAccount(debriefsFolder(data), own, { grades, account })
    await mkdir(join(data, 'notes'), { recursive: true })
    const call = { contact: account.throws[0]!.observation.contact, confidencePercent: 80 } as const
    const said = { mode: 'drill', calls: [call], ownFindings: [] } as const
    await writeFile(saidWithRecord(data, join(recordsFolder(data), 'own.json')), notesText(said as never))
    await file('others.json', { player: 'Brono', block: 'b'.repeat(24) })
    // Twice: read from the account, and then from the summary that was kept beside it.
    for (let time = 0; time < 2; time++) {
      const told = await remembered()
      expect(told.costs).toEqual([account.sums.block.chargedPins])
      expect(told.skills).toEqual([{ skill: 'line', costs: [2.5], mean: 2.5 }])
      expect(told.calls).toEqual({ count: 1, right: 1, claimed: 0.8 })
      expect(told).toMatchObject({ unpriced: 0, lanesMet: 1 })
    }
  })

  it('counts a block whose account is not kept as unpriced', async () => {
    await file('unpriced.json', { player: 'Ansa', seed: 'another', block: 'c'.repeat(24) })
    expect(await remembered()).toMatchObject({ unpriced: 1, costs: [expect.any(Number)] })
  })

  it('leaves out what answers a drill, which is no game', async () => {
    const before = await remembered()
    const origin = { ...recordOf(scenario, block).origin, cameToBe: 'drill' } as const
    await file('drilled.json', { player: 'Ansa', seed: 'drilled', block: 'd'.repeat(24), origin })
    expect(await remembered()).toEqual(before)
  })

  it('is nothing where there is nothing', async () => {
    const told = await rememberedOf(data, [])
    expect(told).toMatchObject({ costs: [], skills: [], unpriced: 0, lanesMet: 0, calls: null })
  })
})

describe('figures that took long', () => {
  it('come back for the same scenario and seed, and for no other', async () => {
    const folder = debriefsFolder(data)
    const game = Array.from({ length: 10 }, () => [9, 0])
    const bowled = { games: [game], lostPins: 12.3 }
    const comparison = { thumb: bowled, fair: bowled, known: bowled }
    await keepFigures(folder, COMPARISONS, { scenario, asked: 'one' }, comparison)
    expect(await readFigures(folder, COMPARISONS, { scenario, asked: 'one' })).toEqual(comparison)
    expect(await readFigures(folder, COMPARISONS, { scenario, asked: 'two' })).toBeNull()
    const other = { ...scenario, data: { ...scenario.data, title: 'Another' } }
    expect(await readFigures(folder, COMPARISONS, { scenario: other, asked: 'one' })).toBeNull()
  })
})
