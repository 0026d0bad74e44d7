import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { writeUnderFreeName } from '../../../src/scenarios/files/text/atomic-write.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { dataFolder, recordsFolder } from '../../../src/scenarios/store/data-folder.js'
import { modelFingerprint } from '../../../src/scenarios/store/model-fingerprint.js'
import { type BlockRecord, fileStem, readRecord, recordOf, recordText } from '../../../src/scenarios/store/record.js'
import { replayRecord } from '../../../src/scenarios/store/replay.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'

const folder = () => mkdtempSync(join(tmpdir(), 'dryboard-'))

async function writeRecord(record: BlockRecord, into: string): Promise<string> {
  return writeUnderFreeName({ folder: into, stem: fileStem(record), text: recordText(record) })
}

/** A block whose player throws what is suggested but for a move every third throw. */
async function someThrows(name: string, seed: string, count: number) {
  const scenario = await loadScenario(name)
  let state = beginScenario(scenario, seed)
  for (let number = 0; number < count && state.spot; number++) {
    const suggestion = playerView(state)!.suggestion
    const aim = { ...suggestion.aim, speedStep: ([0, 1, -1] as const)[number % 3] }
    state = advance(state, { ...suggestion, aim })
  }
  return { scenario, state }
}

describe('records', () => {
  it.each([
    ['house-forty', 8],
    ['unseen-draw', 10],
    ['flat-forty-four', 3],
  ])('replay %s to the same state, bit for bit', async (name, count) => {
    const { scenario, state } = await someThrows(name, 'replay', count)
    const path = await writeRecord(recordOf(scenario, state), folder())
    const { states } = replayRecord(await readRecord(path), path)
    expect(states).toHaveLength(count + 1)
    expect(states[count]).toEqual(state)
    expect(states[count].lanes.map((lane) => [...lane.film.microns])).toEqual(
      state.lanes.map((lane) => [...lane.film.microns]),
    )
  })

  it('hold what was decided and nothing that can be worked out again', async () => {
    const { scenario, state } = await someThrows('house-forty', 'small', 3)
    const record = recordOf(scenario, state)
    expect(Object.keys(record)).toEqual([
      'format',
      'version',
      'block',
      'origin',
      'program',
      'model',
      'carryTable',
      'scenarioHash',
      'name',
      'scenario',
      'seed',
      'decisions',
    ])
    expect(record.model).toBe(modelFingerprint())
  })

  it('are written whole, never over another, with equal bytes for equal blocks', async () => {
    const { scenario, state } = await someThrows('house-forty', 'same seed', 2)
    const into = folder()
    const paths = [
      await writeRecord(recordOf(scenario, state), into),
      await writeRecord(recordOf(scenario, state), into),
    ]
    expect(readdirSync(into).sort()).toEqual(['house-forty-same-seed-1.json', 'house-forty-same-seed-2.json'])
    expect(readFileSync(paths[0], 'utf8')).toBe(readFileSync(paths[1], 'utf8'))
  })

  it('are refused where the pins would fall otherwise', async () => {
    const { scenario, state } = await someThrows('house-forty', 'forged', 3)
    const path = await writeRecord(recordOf(scenario, state), folder())
    const record = await readRecord(path)
    const forged = {
      ...record,
      decisions: record.decisions.map((one, index) => (index === 1 ? { ...one, standing: one.standing ^ 1 } : one)),
    }
    expect(() => replayRecord(forged, 'forged.json')).toThrow(
      /^forged\.json: decision 2 leaves .*, but the record says .*changed by hand\.$/,
    )
    expect(() => replayRecord({ ...forged, model: 'another' }, 'old.json')).toThrow(/made by model another/)
  })

  it('are refused where a decision cannot be thrown', async () => {
    const { scenario, state } = await someThrows('house-forty', 'feet', 2)
    const record = recordOf(scenario, state)
    const wild = { ...record, decisions: [{ ...record.decisions[0], feet: 99 }] }
    expect(() => replayRecord(wild, 'wild.json')).toThrow(
      'wild.json: decision 1 cannot be thrown: Slide can be from board',
    )
  })

  it('are checked to the last field, the scenario inside included', async () => {
    const { scenario, state } = await someThrows('house-forty', 'check', 1)
    const spoiled = {
      ...JSON.parse(recordText(recordOf(scenario, state))),
      scenario: { ...scenario.data, games: 99 },
      seed: 5,
    }
    const path = join(folder(), 'spoiled.json')
    writeFileSync(path, JSON.stringify(spoiled))
    await expect(readRecord(path)).rejects.toMatchObject({
      missing: false,
      sentences: [expect.stringContaining('scenario > games: found 99'), expect.stringContaining('seed: found 5')],
    })
  })
})

// XDG base directory specification 0.8: XDG_DATA_HOME, else ~/.local/share; a relative path there is to be ignored.
describe('the data folder', () => {
  it('is the named one, else the environment’s, else the user’s', () => {
    const home = dataFolder(undefined, {})
    expect(home).toMatch(/\.local\/share\/dryboard$/)
    expect(dataFolder(undefined, { XDG_DATA_HOME: '/data' })).toBe('/data/dryboard')
    expect(dataFolder(undefined, { XDG_DATA_HOME: 'data' })).toBe(home)
    expect(dataFolder(undefined, { XDG_DATA_HOME: '/data', DRYBOARD_DATA: '/own' })).toBe('/own')
    expect(dataFolder('/named', { DRYBOARD_DATA: '/own' })).toBe('/named')
    expect(recordsFolder('/own')).toBe('/own/records')
  })
})
