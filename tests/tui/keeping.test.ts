import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenarios/load.js'
import { fileKeeper } from '../../src/tui/keeping.js'
import { noNotes } from '../../src/tui/notes.js'
import { fixtureServices } from './fixtures.js'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'dryboard-keeping-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

const services = fixtureServices()

async function thrown(count: number) {
  const scenario = await loadScenario('house-forty')
  let block = services.begin(scenario, 'keeping')
  for (let i = 0; i < count; i++) block = services.advance(block, services.view(block)!.suggestion)
  return { scenario, block }
}

describe('keeping a block', () => {
  it('gives back the same block, played again from its decisions', async () => {
    const { scenario, block } = await thrown(3)
    await fileKeeper({ DRYBOARD_DATA: folder }).keep(scenario, block, false, noNotes('drill'))
    const kept = await fileKeeper({ DRYBOARD_DATA: folder }).find()
    expect(kept?.throws).toBe(3)
    const again = kept!.takeUp()
    expect(again.states).toHaveLength(4)
    expect(again.states.at(-1)!.throws.map((record) => record.observation)).toEqual(
      block.throws.map((record) => record.observation),
    )
  })

  it('holds the latest throw however fast they come, and leaves no drafts about', async () => {
    const { scenario, block } = await thrown(4)
    const keeper = fileKeeper({ DRYBOARD_DATA: folder })
    const states = [1, 2, 3, 4].map((count) => ({ ...block, throws: block.throws.slice(0, count) }))
    await Promise.all(states.map((state) => keeper.keep(scenario, state, false, noNotes('drill'))))
    expect((await keeper.find())?.throws).toBe(4)
    expect(await readdir(folder)).toEqual(['unfinished-notes.json', 'unfinished.json'])
  })

  it('files a finished block among the records and offers it no more', async () => {
    const { scenario, block } = await thrown(2)
    const keeper = fileKeeper({ DRYBOARD_DATA: folder })
    await keeper.keep(scenario, block, false, noNotes('drill'))
    await keeper.keep(scenario, block, true, noNotes('drill'))
    expect(await keeper.find()).toBeNull()
    expect(await readdir(join(folder, 'records'))).toHaveLength(1)
  })

  it('offers nothing where there is nothing, or nothing readable', async () => {
    const keeper = fileKeeper({ DRYBOARD_DATA: folder })
    expect(await keeper.find()).toBeNull()
    await writeFile(join(folder, 'unfinished.json'), '{"format": "something else"}')
    expect(await keeper.find()).toBeNull()
  })
})
